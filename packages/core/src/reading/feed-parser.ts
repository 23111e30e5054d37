import { CST, type Parser } from 'yaml';

/** The state of the library's parser; its types keep it to themselves. */
interface State {
  atNewLine: boolean;
  atScalar: boolean;
  indent: number;
  offset: number;
  source: string;
  type: CST.TokenType;
  readonly onNewLine?: (offset: number) => void;
  step(): Generator<CST.Token, void>;
}

/** Marks that set off what follows them as spaces at the start of a line do. */
const INDENTS: readonly string[] = ['explicit-key-ind', 'map-value-ind', 'seq-item-ind'];

/** What the library's lexer puts in of its own: it takes up no text. */
const NO_TEXT: readonly string[] = ['doc-mode', 'flow-error-end'];

/**
 * Gives a lexeme to the library's parser and hands on the tokens that it completes, as `parser.next` does; that one asks the
 * environment at each lexeme whether to print it, which takes a fifth of the time of reading.
 */
export function feedParser(parser: Parser, lexeme: string, take: (token: CST.Token) => void): void {
  const state = parser as unknown as State;
  state.source = lexeme;
  // The text of a plain value: the lexeme before said that it is one.
  if (state.atScalar) {
    state.atScalar = false;
    for (const token of state.step()) take(token);
    state.offset += lexeme.length;
    return;
  }
  const type = CST.tokenType(lexeme);
  if (type === null) {
    for (const token of parser.next(lexeme)) take(token);
    return;
  }
  if (type === 'scalar') {
    state.atNewLine = false;
    state.atScalar = true;
    state.type = type;
    return;
  }
  state.type = type;
  for (const token of state.step()) take(token);
  if (NO_TEXT.includes(type)) return;
  const end = state.offset + lexeme.length;
  if (type === 'newline') {
    state.atNewLine = true;
    state.indent = 0;
    state.onNewLine?.(end);
  } else if (type === 'space' || INDENTS.includes(type)) {
    const counts = type !== 'space' || lexeme[0] === ' ';
    if (state.atNewLine && counts) state.indent += lexeme.length;
  } else state.atNewLine = false;
  state.offset = end;
}
