/**
 * A text that may stand in a drawing: one line, every sign printable.
 *
 * Control characters and all white space become single spaces; halves of surrogate pairs, invisible signs and marks that
 * turn the writing direction of what follows go.
 */
export function safeText(text: string): string {
  return text
    .replace(/[\p{Cf}\p{Cs}\ufffe\uffff]/gu, '')
    .replace(/[\p{Cc}\s]+/gu, ' ')
    .trim();
}

/** What XML 1.0 does not allow (section 2.2): most control characters, halves of surrogate pairs, two non-characters. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const NOT_XML = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Cs}/gu;

/** The text with everything that XML reads as markup written as entities, and without what no XML may hold. */
export function escapeXml(text: string): string {
  return text
    .replace(NOT_XML, '')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;');
}

/** Letters of scripts that run from right to left. */
const RIGHT_TO_LEFT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufeff\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u;

/** A sign without width that makes a line run from right to left. */
export const LEFTWARDS_MARK = '\u200f';

/** Whether a text runs from right to left as a whole: its first letter or mark does (Unicode Bidirectional Algorithm, P2 and P3). */
export function runsLeftwards(text: string): boolean {
  const first = /[\p{L}\u200f]/u.exec(text)?.[0];
  return first === LEFTWARDS_MARK || (first !== undefined && RIGHT_TO_LEFT.test(first));
}

/** Whether any of a text runs from right to left. */
export function hasLeftwards(text: string): boolean {
  return RIGHT_TO_LEFT.test(text);
}
