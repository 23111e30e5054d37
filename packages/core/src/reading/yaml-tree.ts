import { type Document, isAlias, isMap, isScalar, isSeq, Lexer, LineCounter, type Node, Parser } from 'yaml';
import { type ToldFault, tellFault } from '../problem/say-fault.ts';
import { composeFirst } from './compose-yaml.ts';
import { DEEPEST_NESTING, MOST_CHARACTERS, MOST_FAULTS, MOST_LEXEMES, MOST_VALUES } from './limits.ts';
import { withLineFeeds } from './line-feeds.ts';
import { joinPath, type Place, type TextFault, type Tree } from './tree.ts';
import { explainYamlErrors } from './yaml-faults.ts';

/**
 * Reads YAML 1.2 (and so JSON) into plain data: strings, numbers, booleans, null, lists and groups, nothing else.
 *
 * Refused, each with its place: what is not YAML, several documents in one file, tags, keys that are not plain words,
 * one key twice, aliases to nothing or to themselves, nesting past `DEEPEST_NESTING`, more than `MOST_LEXEMES` words and
 * marks, more than `MOST_VALUES` values once aliases are followed. Merge keys mean nothing in YAML 1.2, so `<<` is a key like any other. Numbers in other
 * bases than ten stay text, for the reader of figures to refuse. Takes time in proportion to the text.
 */
export function readYaml(text: string): Tree {
  const fileFault = (told: ToldFault, line = 0, column = 0): Tree => ({
    value: null,
    places: new Map(),
    keyPlaces: new Map(),
    faults: [{ at: '', line, column, text: '', ...told }],
  });
  if (text.length > MOST_CHARACTERS) return fileFault(tellFault('fault.file-too-large', { characters: text.length }));
  if (text.includes('\0')) return fileFault(tellFault('fault.file-not-text', {}));

  const lines = new LineCounter();
  lines.addNewLine(0);
  const parser = new Parser(lines.addNewLine);
  const tokens = [];
  const faultHere = (told: ToldFault): Tree => {
    const { line, col } = lines.linePos(parser.offset);
    return fileFault(told, line, col);
  };
  let lexemes = 0;
  const refused = new Set<number>();
  let started = 0;
  // Nesting is counted before anything recursive sees the text: a deep stack can bring the whole process down.
  for (const lexeme of new Lexer().lex(withLineFeeds(text))) {
    for (const token of parser.next(lexeme)) {
      tokens.push(token);
      if (token.type === 'error') refused.add(token.offset);
      if (token.type === 'document') started++;
    }
    if (parser.stack.length > DEEPEST_NESTING)
      return faultHere(tellFault('fault.yaml-too-deep', { most: DEEPEST_NESTING }));
    if (++lexemes > MOST_LEXEMES)
      return faultHere(tellFault('fault.yaml-too-many-values.marks', { most: MOST_LEXEMES }));
    // One document is read, and a second is told of: a third says nothing new.
    if (refused.size > 20 || started > 2) break;
  }
  // Not spread into the call: a call with a million arguments brings the process down.
  for (const token of parser.end()) tokens.push(token);
  const { documents, errors } = composeFirst(tokens);
  const first = documents[0];
  if (errors.length === 0 && (first === undefined || first.contents === null))
    return fileFault(tellFault('fault.file-empty', {}));
  if (errors.length > 0 || first === undefined)
    return {
      value: null,
      places: new Map(),
      keyPlaces: new Map(),
      faults: explainYamlErrors(errors, { text, lines, refused }),
    };
  const walk = walkDocument(first, lines);
  const value = documents.length > 1 ? null : walk.value;
  return { ...walk, value, faults: [...checkDocuments(documents, lines), ...walk.faults] };
}

function checkDocuments(documents: readonly Document.Parsed[], lines: LineCounter): TextFault[] {
  const faults: TextFault[] = [];
  const first = documents[0]!;
  if (first.directives.yaml.version !== '1.2')
    faults.push({
      at: '',
      line: 1,
      column: 1,
      text: `%YAML ${first.directives.yaml.version}`,
      ...tellFault('fault.yaml-version', { version: first.directives.yaml.version }),
    });
  const second = documents[1];
  if (second !== undefined) {
    const { line, col } = lines.linePos(second.range[0]);
    faults.push({ at: '', line, column: col, text: '---', ...tellFault('fault.yaml-several-documents', {}) });
  }
  return faults;
}

interface Walk {
  readonly value: unknown;
  readonly places: Map<string, Place>;
  readonly keyPlaces: Map<string, Place>;
  readonly faults: TextFault[];
}

const DECIMAL_NUMBER = /^[-+]?(?:0|[1-9]\d*|(?=\.\d)|\d+(?=\.))(?:\.\d*)?(?:[eE][-+]?\d+)?$/;
const NOT_FINITE = /^[-+]?\.(?:inf|Inf|INF|nan|NaN|NAN)$/;
const UNUSABLE_KEYS: readonly string[] = ['__proto__', 'prototype', 'constructor'];

/** The values of a document with their places: aliases followed, tags and unusable keys refused, bounded in number and depth. */
function walkDocument(document: Document.Parsed, lines: LineCounter): Walk {
  const places = new Map<string, Place>();
  const keyPlaces = new Map<string, Place>();
  const faults: TextFault[] = [];
  const anchors = new Map<string, Node>();
  const open = new Set<Node>();
  let values = 0;

  const placeOf = (node: Node): Place => {
    const { line, col } = lines.linePos(node.range?.[0] ?? 0);
    return { line, column: col, text: shorten(textOf(node)) };
  };
  const report = (told: ToldFault, at: string, node: Node): undefined => {
    // No more than are put into words: places take longest to find.
    if (faults.length < MOST_FAULTS) faults.push({ at, ...placeOf(node), ...told });
    return undefined;
  };

  const walk = (node: Node | null, at: string): unknown => {
    if (node === null) return null;
    // Too many values? Said once; the rest is passed over.
    values++;
    if (values > MOST_VALUES) {
      if (values === MOST_VALUES + 1) report(tellFault('fault.yaml-too-many-values', { most: MOST_VALUES }), at, node);
      return undefined;
    }
    // What an alias repeats is walked again where it stands, unless it would repeat itself for ever.
    if (isAlias(node)) {
      const target = anchors.get(node.source);
      if (target === undefined) return report(tellFault('fault.yaml-alias.nothing', { alias: node.source }), at, node);
      if (open.has(target) || open.size > DEEPEST_NESTING)
        return report(tellFault('fault.yaml-alias.itself', { alias: node.source }), at, node);
      return walk(target, at);
    }
    if (node.tag !== undefined) return report(tellFault('fault.yaml-tag', { tag: node.tag }), at, node);
    if ('anchor' in node && node.anchor) anchors.set(node.anchor, node);
    places.set(at, placeOf(node));
    if (isScalar(node)) return readScalar(node.value, node.type === 'PLAIN' ? node.source : undefined);
    // A list or a group is open while its inside is walked.
    open.add(node);
    const value = isSeq(node)
      ? node.items.map((item, index) => walk(item as Node | null, joinPath(at, index)))
      : isMap(node)
        ? walkMap(node.items as { key: Node; value: Node | null }[], at)
        : undefined;
    open.delete(node);
    return value;
  };

  const walkMap = (pairs: readonly { key: Node; value: Node | null }[], at: string): Record<string, unknown> => {
    const group: Record<string, unknown> = Object.create(null);
    for (const { key, value } of pairs) {
      const name = isScalar(key) && key.tag === undefined ? keyName(key.value, key.source) : undefined;
      if (name === undefined || UNUSABLE_KEYS.includes(name)) {
        if (values <= MOST_VALUES) report(tellFault('fault.yaml-key', { key: shorten(textOf(key)) }), at, key);
        continue;
      }
      // Of a key that is given twice the first counts.
      const path = joinPath(at, name);
      if (Object.hasOwn(group, name)) {
        if (values <= MOST_VALUES)
          report(tellFault('fault.duplicate-key', { line: keyPlaces.get(path)!.line }), path, key);
        continue;
      }
      if (isScalar(key) && key.anchor) anchors.set(key.anchor, key);
      keyPlaces.set(path, placeOf(key));
      group[name] = walk(value, path);
      // A value of nothing stands where its key does.
      if (!places.has(path)) places.set(path, placeOf(key));
    }
    return group;
  };

  const value = walk(document.contents, '');
  return { value: values > MOST_VALUES ? null : value, places, keyPlaces, faults };
}

function keyName(value: unknown, source: string | undefined): string | undefined {
  if (typeof value === 'string') return value;
  // A knife may be called 13: the name is what is written, not the number.
  return typeof value === 'number' ? source : undefined;
}

function readScalar(value: unknown, source: string | undefined): unknown {
  if (typeof value !== 'number' || source === undefined) return value;
  return DECIMAL_NUMBER.test(source) || NOT_FINITE.test(source) ? value : source;
}

function textOf(node: Node): string {
  if (isMap(node)) return '{…}';
  if (isSeq(node)) return '[…]';
  if (isAlias(node)) return `*${node.source}`;
  return isScalar(node) ? (node.source ?? '') : '';
}

function shorten(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim();
  return line.length > 40 ? `${line.slice(0, 38)}…` : line;
}
