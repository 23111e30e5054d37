import { type Document, Lexer, LineCounter, Parser } from 'yaml';
import { type ToldFault, tellFault } from '../problem/say-fault.ts';
import { tellTextFault } from '../problem/say-text-fault.ts';
import { composeFirst } from './compose-yaml.ts';
import { DEEPEST_NESTING, MOST_CHARACTERS, MOST_LEXEMES } from './limits.ts';
import { withLineFeeds } from './line-feeds.ts';
import type { TextFault, Tree } from './tree.ts';
import { walkDocument } from './walk-document.ts';
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
  if (text.length > MOST_CHARACTERS)
    return fileFault(tellTextFault('fault.file-too-large', { characters: text.length }));
  if (text.includes('\0')) return fileFault(tellTextFault('fault.file-not-text', {}));

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
  // Check the nesting before any recursive code runs: deep recursion can crash the process.
  for (const lexeme of new Lexer().lex(withLineFeeds(text))) {
    for (const token of parser.next(lexeme)) {
      tokens.push(token);
      if (token.type === 'error') refused.add(token.offset);
      if (token.type === 'document') started++;
    }
    if (parser.stack.length > DEEPEST_NESTING)
      return faultHere(tellTextFault('fault.yaml-too-deep', { most: DEEPEST_NESTING }));
    if (++lexemes > MOST_LEXEMES)
      return faultHere(tellTextFault('fault.yaml-too-many-values.marks', { most: MOST_LEXEMES }));
    // Stop after the second document: it is a fault already.
    if (refused.size > 20 || started > 2) break;
  }
  // No spread here: a call with a million arguments crashes the process.
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
      ...tellTextFault('fault.yaml-version', { version: first.directives.yaml.version }),
    });
  const second = documents[1];
  if (second !== undefined) {
    const { line, col } = lines.linePos(second.range[0]);
    faults.push({ at: '', line, column: col, text: '---', ...tellTextFault('fault.yaml-several-documents', {}) });
  }
  return faults;
}
