/** Columns of a printed sheet. */
export const SHEET_WIDTH = 80;

/**
 * Characters that a terminal shows two columns wide: those that Unicode calls wide or fullwidth (UAX 11), by their blocks: Hangul,
 * kana, Chinese signs with their marks and forms, pictures.
 */
const WIDE =
  /[\u1100-\u115F\u231A\u231B\u2329\u232A\u23E9-\u23EC\u2614\u2615\u2648-\u2653\u2E80-\u303E\u3041-\u4DBF\u4E00-\uA4CF\uA960-\uA97C\uAC00-\uD7A3\uF900-\uFAFF\uFE10-\uFE19\uFE30-\uFE6B\uFF01-\uFF60\uFFE0-\uFFE6\u{16FE0}-\u{18DFF}\u{1AFF0}-\u{1B2FB}\u{1F300}-\u{1F64F}\u{1F680}-\u{1F6FC}\u{1F900}-\u{1F9FF}\u{1FA70}-\u{1FAFF}\u{20000}-\u{3FFFD}]/u;

/** Signs that take no column: marks set over or under the one before, joiners, the later parts of a Hangul syllable. */
const NARROWEST = /[\p{Mn}\p{Me}\p{Cf}\u1160-\u11FF]/u;

/** Text of Latin letters, marks and digits alone: a column to each. */
const PLAIN = /^[\u0020-\u02FF]*$/;

/** Columns that a text takes on a terminal. */
export function columnsOf(text: string): number {
  if (PLAIN.test(text)) return text.length;
  let columns = 0;
  for (const sign of text) columns += NARROWEST.test(sign) ? 0 : isWide(sign) ? 2 : 1;
  return columns;
}

/** Whether a sign takes two columns. */
export function isWide(sign: string): boolean {
  return WIDE.test(sign);
}

/** A text filled up with blanks to a number of columns, on its right. */
export function padRight(text: string, columns: number): string {
  return text + ' '.repeat(Math.max(0, columns - columnsOf(text)));
}

/** The same with the blanks on its left. */
export function padLeft(text: string, columns: number): string {
  return ' '.repeat(Math.max(0, columns - columnsOf(text))) + text;
}
