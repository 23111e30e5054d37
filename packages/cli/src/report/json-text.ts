/** Characters that turn the direction of writing, cannot be seen, or end a line where nobody looks: escaped, and so plain to see. */
const UNSEEN = /[\u007F-\u009F\p{Zl}\p{Zp}\u061C\u200B\u200E\u200F\u202A-\u202E\u2060-\u206F\uFEFF\uFFF9-\uFFFB]/gu;

/** An answer as JSON, two spaces deep, with a line feed at its end. */
export function jsonText(value: unknown): string {
  const text = JSON.stringify(value, null, 2).replace(
    UNSEEN,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
  return `${text}\n`;
}

/** The list of what `jsonText` made of each: the same text as that of the whole list. */
export function jsonListText(texts: readonly string[]): string {
  if (texts.length === 0) return '[]\n';
  // Line feeds stand between the parts of an answer only: within a text they are escaped.
  const items = texts.map((text) => `  ${text.trimEnd().replaceAll('\n', '\n  ')}`);
  return `[\n${items.join(',\n')}\n]\n`;
}
