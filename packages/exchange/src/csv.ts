/** A table of numbers with a heading for each column. */
export interface NumberTable {
  readonly headings: readonly string[];
  readonly rows: readonly (readonly (number | null)[])[];
}

/** Decimal places of a written number: a nanometre where the column is in mm. */
const PLACES = 6;

/**
 * A table as CSV (RFC 4180: commas, CRLF, quotes where a heading needs them); numbers to six places, null left empty. With a
 * decimal comma semicolons part the columns, as spreadsheets of such a language read and write them.
 *
 * @example writeCsv({ headings: ['s (mm)', 't (mm)'], rows: [[0, 0], [1, 1.25]] }) // 's (mm),t (mm)\r\n0,0\r\n1,1.25\r\n'
 */
export function writeCsv({ headings, rows }: NumberTable, decimal: '.' | ',' = '.'): string {
  const write = (value: number | null) => (value === null ? '' : plain(value).replace('.', decimal));
  const lines = [headings.map(quote), ...rows.map((row) => row.map(write))];
  return lines.map((line) => `${line.join(decimal === ',' ? ';' : ',')}\r\n`).join('');
}

function quote(heading: string): string {
  return /[",;\r\n]/.test(heading) ? `"${heading.replaceAll('"', '""')}"` : heading;
}

function plain(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a table holds ${value}, which is not a number`);
  return String(Number(value.toFixed(PLACES)) + 0);
}

/** Points read from a text of two columns, and the lines that could not be read. */
export interface PointReading {
  readonly points: readonly { readonly x: number; readonly y: number }[];
  /** 1-based line numbers. */
  readonly unread: readonly number[];
}

/**
 * Points from two columns of numbers, such as a scanned outline: parted by commas, semicolons, tabs or spaces; further
 * columns are ignored, empty lines and lines that start with # are left out, and one heading line may come first. Decimal points only: 1,5 is two numbers.
 */
export function readPoints(text: string): PointReading {
  const points: { x: number; y: number }[] = [];
  const unread: number[] = [];
  text.split(/\r\n|\r|\n/).forEach((line, index) => {
    const words = line.trim();
    if (words === '' || words.startsWith('#')) return;
    const [x, y] = words.split(/\s*[,;]\s*|\s+/).map((word) => (word === '' ? Number.NaN : Number(word)));
    if (x !== undefined && y !== undefined && Number.isFinite(x) && Number.isFinite(y)) points.push({ x, y });
    else if (index > 0) unread.push(index + 1);
  });
  return { points, unread };
}
