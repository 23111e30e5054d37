import { type Document, isAlias, isMap, isScalar, isSeq, Lexer, LineCounter, type Node, Parser } from 'yaml';
import type { FaultCode } from '../problem/codes.ts';
import { composeFirst } from './compose-yaml.ts';
import { DEEPEST_NESTING, MOST_CHARACTERS, MOST_LEXEMES, MOST_VALUES } from './limits.ts';
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
  const fileFault = (code: FaultCode, what: string, instead: string): Tree => ({
    value: null,
    places: new Map(),
    keyPlaces: new Map(),
    faults: [{ code, at: '', line: 0, column: 0, text: '', what, instead }],
  });
  if (text.length > MOST_CHARACTERS)
    return fileFault('file-too-large', `The file has ${text.length} characters`, 'Files of up to a million are read');
  if (text.includes('\0')) return fileFault('file-not-text', 'The file is not text', 'Write it as plain text (UTF-8)');

  const lines = new LineCounter();
  lines.addNewLine(0);
  const parser = new Parser(lines.addNewLine);
  const tokens = [];
  const faultHere = (code: FaultCode, what: string, instead: string): Tree => {
    const { line, col } = lines.linePos(parser.offset);
    const fault: TextFault = { code, at: '', line, column: col, text: '', what, instead };
    return { value: null, places: new Map(), keyPlaces: new Map(), faults: [fault] };
  };
  let lexemes = 0;
  let broken = 0;
  let started = 0;
  // Nesting is counted before anything recursive sees the text: a deep stack can bring the whole process down.
  for (const lexeme of new Lexer().lex(text)) {
    for (const token of parser.next(lexeme)) {
      tokens.push(token);
      if (token.type === 'error') broken++;
      if (token.type === 'document') started++;
    }
    if (parser.stack.length > DEEPEST_NESTING)
      return faultHere(
        'yaml-too-deep',
        `Lists and groups stand more than ${DEEPEST_NESTING} deep inside each other`,
        'Write the file as in the examples: the deepest they go is six',
      );
    if (++lexemes > MOST_LEXEMES)
      return faultHere(
        'yaml-too-many-values',
        `The file holds more than ${MOST_LEXEMES} words, marks and line ends of YAML`,
        'Check that this is the right file, or split it into several',
      );
    // One document is read, and a second is told of: a third says nothing new.
    if (broken > 20 || started > 2) break;
  }
  // Not spread into the call: a call with a million arguments brings the process down.
  for (const token of parser.end()) tokens.push(token);
  const { documents, errors } = composeFirst(tokens);
  const first = documents[0];
  if (errors.length === 0 && (first === undefined || first.contents === null))
    return fileFault('file-empty', 'The file is empty', 'Start from one of the examples, or from docs/job-file.md');
  if (errors.length > 0 || first === undefined)
    return { value: null, places: new Map(), keyPlaces: new Map(), faults: explainYamlErrors(errors, lines, text) };
  const walk = walkDocument(first, lines);
  const value = documents.length > 1 ? null : walk.value;
  return { ...walk, value, faults: [...checkDocuments(documents, lines), ...walk.faults] };
}

function checkDocuments(documents: readonly Document.Parsed[], lines: LineCounter): TextFault[] {
  const faults: TextFault[] = [];
  const first = documents[0]!;
  if (first.directives.yaml.version !== '1.2')
    faults.push({
      code: 'yaml-version',
      at: '',
      line: 1,
      column: 1,
      text: `%YAML ${first.directives.yaml.version}`,
      what: `The file asks for YAML ${first.directives.yaml.version}`,
      instead: 'Take the %YAML line out: files are read as YAML 1.2',
    });
  const second = documents[1];
  if (second !== undefined) {
    const { line, col } = lines.linePos(second.range[0]);
    faults.push({
      code: 'yaml-several-documents',
      at: '',
      line,
      column: col,
      text: '---',
      what: 'A second document starts here, after a line of ---',
      instead: 'Write one job to a file',
    });
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
  const report = (code: FaultCode, at: string, node: Node, what: string, instead: string): undefined => {
    faults.push({ code, at, ...placeOf(node), what, instead });
    return undefined;
  };

  const walk = (node: Node | null, at: string): unknown => {
    if (node === null) return null;
    values++;
    if (values > MOST_VALUES) {
      if (values === MOST_VALUES + 1)
        report(
          'yaml-too-many-values',
          at,
          node,
          `The file holds more than ${MOST_VALUES} values, counting what aliases repeat`,
          'Write out what is needed, without aliases inside aliases',
        );
      return undefined;
    }
    if (isAlias(node)) {
      const target = anchors.get(node.source);
      if (target === undefined)
        return report(
          'yaml-alias',
          at,
          node,
          `*${node.source} stands for nothing`,
          `Give the value it repeats an anchor, &${node.source}, above it`,
        );
      if (open.has(target) || open.size > DEEPEST_NESTING)
        return report('yaml-alias', at, node, `*${node.source} repeats something that holds it`, 'Write the value out');
      return walk(target, at);
    }
    if (node.tag !== undefined)
      return report(
        'yaml-tag',
        at,
        node,
        `A tag, ${node.tag}, stands before the value`,
        'Take it out: the value alone is enough',
      );
    if ('anchor' in node && node.anchor) anchors.set(node.anchor, node);
    places.set(at, placeOf(node));
    if (isScalar(node)) return readScalar(node.value, node.type === 'PLAIN' ? node.source : undefined);
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
        if (values <= MOST_VALUES)
          report(
            'yaml-key',
            at,
            key,
            `"${shorten(textOf(key))}" cannot stand before the colon`,
            'Write a plain word there',
          );
        continue;
      }
      const path = joinPath(at, name);
      if (Object.hasOwn(group, name)) {
        if (values <= MOST_VALUES)
          report(
            'duplicate-key',
            path,
            key,
            `${path} is given twice, first on line ${keyPlaces.get(path)!.line}`,
            'Keep one of them',
          );
        continue;
      }
      if (isScalar(key) && key.anchor) anchors.set(key.anchor, key);
      keyPlaces.set(path, placeOf(key));
      group[name] = walk(value, path);
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
