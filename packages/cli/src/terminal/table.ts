/** A column: its heading, and the side its cells are set to. */
export interface Column {
  readonly heading: string;
  readonly align: 'left' | 'right';
}

export const left = (heading: string): Column => ({ heading, align: 'left' });
export const right = (heading: string): Column => ({ heading, align: 'right' });

/** A plain-text table, two blanks between columns and no lines; `indent` blanks before each row. Rows as cells in the columns' order. */
export function setTable(columns: readonly Column[], rows: readonly (readonly string[])[], indent = 2): string[] {
  const widths = columns.map(({ heading }, k) => Math.max(heading.length, ...rows.map((row) => row[k]!.length)));
  const setRow = (cells: readonly string[]) => {
    const set = cells.map((cell, k) =>
      columns[k]!.align === 'left' ? cell.padEnd(widths[k]!) : cell.padStart(widths[k]!),
    );
    return `${' '.repeat(indent)}${set.join('  ')}`.trimEnd();
  };
  return [setRow(columns.map(({ heading }) => heading)), ...rows.map(setRow)];
}

/** Labels and what they stand for, one pair to a line, the labels set to `width` columns. */
export function setPairs(pairs: readonly (readonly [string, string])[], width = 19): string[] {
  return pairs.map(([label, value]) => `  ${label.padEnd(width)}${value}`);
}

/** Lines set two columns in. */
export function indent(lines: readonly string[]): string[] {
  return lines.map((line) => `  ${line}`);
}

/** Between words, but not between a figure and its unit. */
const BREAKS = /(?<!\d) | (?!(?:mm|in|mm²|in²)\b)/;

/** Text in lines of at most `width` characters, broken between words; each line but the first is indented by `hang`. */
export function wrap(text: string, width: number, hang: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(BREAKS)) {
    const room = lines.length === 0 ? width : width - hang;
    if (line !== '' && line.length + 1 + word.length > room) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  lines.push(line);
  return lines.map((each, k) => (k === 0 ? each : ' '.repeat(hang) + each));
}
