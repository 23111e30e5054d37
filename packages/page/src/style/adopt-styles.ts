const adopted = new Set<string>();

/** Takes up the styles of a part, which come in its own file: where that is fetched again, so are they. */
export function adoptStyles(css: string): void {
  if (adopted.has(css)) return;
  adopted.add(css);
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(css);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
}
