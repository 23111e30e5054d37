import { CST, Lexer } from 'yaml';
import { withLineFeeds } from './line-feeds.ts';

/** The words and marks of YAML round a place in a text. */
export interface Around {
  /** The one that ends there; '' at the start. */
  readonly before: string;
  /** The one that starts there; '' at the end of the text, or where none starts there. */
  readonly after: string;
  /** How many lists in [ ] and groups in { } are open there. */
  readonly open: number;
}

/** Lexemes of the library that take up no text: they mark the start of a document or of a plain value, and the end of a broken list. */
const EMPTY_LEXEMES: readonly string[] = [CST.DOCUMENT, CST.FLOW_END, CST.SCALAR];

/** What stands round each place of a text: offsets in it, in rising order. Takes time in proportion to the text. */
export function wordsAround(text: string, places: readonly number[]): Around[] {
  const found: Around[] = [];
  let offset = 0;
  let before = '';
  let open = 0;
  const lexemes = new Lexer().lex(withLineFeeds(text));
  for (const lexeme of lexemes) {
    if (EMPTY_LEXEMES.includes(lexeme)) {
      // A list that ends by its indent is still open where the fault is found: it counts as closed from the next word on.
      if (lexeme === CST.FLOW_END && found.length < places.length && places[found.length]! > offset) open = 0;
      continue;
    }
    const end = offset + lexeme.length;
    while (found.length < places.length && places[found.length]! < end) {
      const starts = places[found.length] === offset;
      found.push({ before: starts ? before : '', after: starts ? lexeme : '', open });
    }
    if (found.length === places.length) return found;
    open = Math.max(0, open + opens(lexeme));
    before = lexeme;
    offset = end;
  }
  while (found.length < places.length) found.push({ before, after: '', open });
  return found;
}

function opens(lexeme: string): number {
  const type = CST.tokenType(lexeme);
  if (type === 'flow-map-start' || type === 'flow-seq-start') return 1;
  return type === 'flow-map-end' || type === 'flow-seq-end' ? -1 : 0;
}

/** Whether a word of YAML is a quoted text whose quote is not closed. */
export function isOpenQuote(word: string): boolean {
  if (word.startsWith('"')) return !/^"(?:[^"\\]|\\.)*"$/s.test(word);
  return word.startsWith("'") && !/^'(?:[^']|'')*'$/.test(word);
}
