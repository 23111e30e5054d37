import { columnsOf, isWide, padLeft, padRight } from './columns.ts';

/** A column: its heading, and the side its cells are set to. */
export interface Column {
  readonly heading: string;
  readonly align: 'left' | 'right';
}

export const left = (heading: string): Column => ({ heading, align: 'left' });
export const right = (heading: string): Column => ({ heading, align: 'right' });

/** A plain-text table, two blanks between columns and no lines; `indent` blanks before each row. Rows as cells in the columns' order. */
export function setTable(columns: readonly Column[], rows: readonly (readonly string[])[], indent = 2): string[] {
  const widths = columns.map(({ heading }, k) =>
    Math.max(columnsOf(heading), ...rows.map((row) => columnsOf(row[k]!))),
  );
  const setRow = (cells: readonly string[]) => {
    const set = cells.map((cell, k) =>
      columns[k]!.align === 'left' ? padRight(cell, widths[k]!) : padLeft(cell, widths[k]!),
    );
    return `${' '.repeat(indent)}${set.join('  ')}`.trimEnd();
  };
  return [setRow(columns.map(({ heading }) => heading)), ...rows.map(setRow)];
}

/** Columns that labels take unless one of them is longer. */
const LABEL_COLUMNS = 19;

/** Columns for labels: as many as are given, or one more than the longest takes. */
export function labelWidth(labels: readonly string[], least: number = LABEL_COLUMNS): number {
  return Math.max(least, ...labels.map((label) => columnsOf(label) + 1));
}

/** Labels and what they stand for, one pair to a line, the labels set to `least` columns or to the longest of them. */
export function setPairs(pairs: readonly (readonly [string, string])[], least: number = LABEL_COLUMNS): string[] {
  const width = labelWidth(
    pairs.map(([label]) => label),
    least,
  );
  return pairs.map(([label, value]) => `  ${padRight(label, width)}${value}`);
}

/** Lines set two columns in. */
export function indent(lines: readonly string[]): string[] {
  return lines.map((line) => `  ${line}`);
}

/** Between words, but not between a figure and its unit. */
const BREAKS = /(?<!\d) | (?!(?:mm|in|mm²|in²)\b)/;

/**
 * Text in lines of at most `width` columns, broken between words, where `breaks` says so; each line but the first is indented by `hang`.
 * A word that is longer has a line of its own.
 */
export function wrap(text: string, width: number, hang: number, breaks: RegExp = BREAKS): string[] {
  const lines: string[] = [];
  let line = '';
  const roomOf = () => (lines.length === 0 ? width : width - hang);
  for (const word of text.split(breaks)) {
    const wanted = line === '' ? word : `${line} ${word}`;
    if (columnsOf(wanted) <= roomOf()) {
      line = wanted;
      continue;
    }
    // Chinese and Japanese put no spaces between words: a line may break after any of their characters.
    const pieces = breakWide(wanted);
    if (pieces.length === 1 && line !== '') {
      lines.push(line);
      line = word;
      continue;
    }
    line = '';
    for (const piece of pieces) {
      if (line.trim() !== '' && columnsOf(line + piece) > roomOf()) {
        lines.push(line.trimEnd());
        line = piece.trimStart();
      } else line += piece;
    }
  }
  lines.push(line);
  return lines.map((each, k) => (k === 0 ? each : ' '.repeat(hang) + each));
}

/** Characters that may not start a line. */
const CLOSING = /[、。，．：；！？）」』】〉》ー々]/;

/** A text in pieces that a line may end after: whole words, but for wide signs, each of which is a piece. One piece where it has none. */
function breakWide(text: string): string[] {
  const signs = [...text];
  if (!signs.some(isWide)) return [text];
  const pieces: string[] = [];
  for (const [k, sign] of signs.entries()) {
    const before = signs[k - 1] ?? '';
    const starts = !CLOSING.test(sign) && (isWide(sign) || isWide(before) || before === ' ');
    if (starts || pieces.length === 0) pieces.push(sign);
    else pieces[pieces.length - 1] += sign;
  }
  return pieces;
}
