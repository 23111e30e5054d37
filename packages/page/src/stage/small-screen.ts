/** Whether the screen has room for one thing at a time: a phone either way up, or a tablet with its keyboard out. */
export function isSmallScreen(): boolean {
  return matchMedia('(max-width: 860px), (max-height: 520px)').matches;
}

/** The height of the screen that a keyboard on it leaves free, px. */
export function seenHeight(): number {
  return globalThis.visualViewport?.height ?? innerHeight;
}

/** How far what is seen lies below the top of the page's own view, px: where a keyboard lies over the page, a browser moves it so. */
export function seenTop(): number {
  return globalThis.visualViewport?.offsetTop ?? 0;
}
