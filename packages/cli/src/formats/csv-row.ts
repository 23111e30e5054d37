/**
 * A row of CSV (RFC 4180) with its line end; numbers with the given decimal sign, columns separated by semicolons where
 * that is a comma. Texts that a spreadsheet would take for a formula start with an apostrophe.
 *
 * @example csvRow(['panel', 1.5], ',') // 'panel;1,5\r\n'
 */
export function csvRow(cells: readonly (string | number)[], decimal: Decimal = '.'): string {
  const between = decimal === ',' ? ';' : ',';
  const written = cells.map((cell) => (typeof cell === 'number' ? csvNumber(cell, decimal) : csvCell(cell, between)));
  return `${written.join(between)}\r\n`;
}

/** The decimal sign. */
export type Decimal = '.' | ',';

export function csvNumber(value: number, decimal: Decimal): string {
  return String(value).replace('.', decimal);
}

/** Puts an apostrophe before what a spreadsheet would take for a formula. Drops invisible characters and those that change the writing's direction. */
function csvCell(cell: string, between: string): string {
  const text = cell.replace(/\p{Cf}/gu, '').replace(/(?![\t\r\n])\p{Cc}+/gu, ' ');
  const plain = /^[=+@\t\r]|^-(?![\d.]+$)/.test(text) ? `'${text}` : text;
  return /["\r\n]/.test(plain) || plain.includes(between) ? `"${plain.replaceAll('"', '""')}"` : plain;
}
