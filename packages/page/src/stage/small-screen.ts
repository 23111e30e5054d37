/** Whether the screen has room for one thing at a time: a phone either way up, or a tablet with its keyboard out. */
export function isSmallScreen(): boolean {
  return matchMedia('(max-width: 860px), (max-height: 520px)').matches;
}

/** The height of the screen that a keyboard on it leaves free, px. */
export function seenHeight(): number {
  return globalThis.visualViewport?.height ?? innerHeight;
}
