/**
 * A text with line feeds where an old Mac's file has carriage returns alone: YAML 1.2 (5.4) takes both as line ends, the library only
 * the one. As long as the text was, so that places in it stay what they are.
 */
export function withLineFeeds(text: string): string {
  return text.replace(/\r(?!\n)/g, '\n');
}
