import type { LineCounter, YAMLParseError } from 'yaml';
import { tellTextFault } from '../problem/say-text-fault.ts';
import type { TextFault } from './tree.ts';
import { type Around, isOpenQuote, wordsAround } from './yaml-words.ts';

/** A text that is not YAML, its lines, and where words stand that the library could not place at all. */
export interface FaultyText {
  readonly text: string;
  readonly lines: LineCounter;
  readonly refused: ReadonlySet<number>;
}

/** YAML's own complaints in a maker's words, one to a line of the file: the rest mostly follow from the first. */
export function explainYamlErrors(
  errors: readonly YAMLParseError[],
  { lines, text, refused }: FaultyText,
): TextFault[] {
  const inOrder = [...errors].sort((one, other) => one.pos[0] - other.pos[0]);
  const around = wordsAround(
    text,
    inOrder.map(({ pos }) => pos[0]),
  );
  const faults: TextFault[] = [];
  const seen = new Set<number>();
  for (const [index, { code, pos }] of inOrder.entries()) {
    const { line, col } = lines.linePos(pos[0]);
    if (seen.has(line)) continue;
    seen.add(line);
    const written = readLine(text, lines, line);
    const kind = code === 'UNEXPECTED_TOKEN' && refused.has(pos[0]) ? 'line' : kindOf(code, around[index]!, written);
    const told = tellTextFault(`fault.yaml-syntax.${kind}`, {});
    faults.push({ at: '', line, column: col, text: shorten(written.trim()), ...told });
  }
  return faults;
}

/** Which of YAML's complaints it is: the library's code tells most, what stands round the place the rest. */
function kindOf(code: YAMLParseError['code'], { before, after, open }: Around, line: string) {
  if (code === 'TAB_AS_INDENT') return 'tab';
  // Is a quote left over? Either it opens a text that never closes, or a word follows a value that has ended.
  const neverCloses = code === 'MISSING_CHAR' && isOpenQuote(before);
  const leftOver = code === 'UNEXPECTED_TOKEN' && open === 0 && isWord(after);
  if ((neverCloses || leftOver) && endsInQuote(line)) return 'quotes';
  if (neverCloses) return 'open-quote';
  if (open > 0 && IN_LIST.includes(code)) return 'list';
  if (code === 'BAD_INDENT') return 'indent';
  if (code === 'BLOCK_AS_IMPLICIT_KEY' || code === 'MULTILINE_IMPLICIT_KEY') return 'colon';
  if (code === 'BAD_SCALAR_START') return 'sign';
  if (code === 'BAD_ALIAS') return 'alias';
  return code === 'RESOURCE_EXHAUSTION' ? 'deep' : 'line';
}

/** What the library says of a list or group that does not end or lacks a comma, or that holds lines of their own. */
const IN_LIST: readonly YAMLParseError['code'][] = [
  'MISSING_CHAR',
  'UNEXPECTED_TOKEN',
  'BAD_INDENT',
  'BLOCK_IN_FLOW',
  'MULTILINE_IMPLICIT_KEY',
];

/** Whether a lexeme is a value or a part of one, and no mark. */
function isWord(lexeme: string): boolean {
  return lexeme !== '' && !/^[\s[\]{},#&*!%|>]|^[-?:]$|^(?:---|\.\.\.)$/.test(lexeme);
}

/** Whether a line ends in a quote, before a comment or not, and holds another. */
function endsInQuote(line: string): boolean {
  // A line longer than any that a person writes is not searched for quotes: that takes its length squared.
  return line.length <= 1000 && /["'].*["']\s*(#.*)?$/.test(line);
}

function readLine(text: string, lines: LineCounter, line: number): string {
  const start = lines.lineStarts[line - 1] ?? 0;
  const end = text.indexOf('\n', start);
  return text.slice(start, end < 0 ? undefined : end).replace(/\r$/, '');
}

function shorten(text: string): string {
  return text.length > 40 ? `${text.slice(0, 38)}…` : text;
}
