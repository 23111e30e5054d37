/** A row of CSV (RFC 4180) with its line end. Texts that a spreadsheet would take for a formula start with an apostrophe. */
export function csvRow(cells: readonly string[]): string {
  return `${cells.map(csvCell).join(',')}\r\n`;
}

/** A formula would begin with one of these signs; a number may. Signs that nobody sees, and those that turn the writing, are left out. */
function csvCell(cell: string): string {
  const text = cell.replace(/\p{Cf}/gu, '').replace(/(?![\t\r\n])\p{Cc}+/gu, ' ');
  const plain = /^[=+@\t\r]|^-(?![\d.]+$)/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}
