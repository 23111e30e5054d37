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

/** The text with everything that XML reads as markup written as entities. */
export function escapeXml(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');
}
