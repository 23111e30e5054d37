/**
 * Keeps the keyboard where it was: what had the focus may be taken away, such as a deleted door or a button of a notice. The
 * focus then goes to the nearest part around it that is still there. Only `side` and what lies in `notices` are watched, as a
 * drawing changes at every frame of a drag.
 */
export function keepFocus(side: HTMLElement, notices: HTMLElement): () => void {
  /** What had the focus last, and all that is around it, inside out. */
  let around: Element[] = [];
  const enter = ({ target }: Pick<Event, 'target'>) => {
    around = [];
    for (let at = target as Element | null; at !== null; at = at.parentElement) around.push(at);
  };
  const look = () => {
    const [last] = around;
    if (last === undefined || last.isConnected || document.activeElement !== document.body) return;
    const near = around.find((element) => element.isConnected);
    const goTo = near instanceof HTMLElement && side.contains(near) ? near : side;
    if (goTo.tabIndex < 0) goTo.tabIndex = -1;
    goTo.focus({ preventScroll: true });
  };
  const watch = new MutationObserver(look);
  for (const part of [side, notices]) watch.observe(part, { childList: true, subtree: true });
  enter({ target: document.activeElement });
  addEventListener('focusin', enter);
  return () => {
    watch.disconnect();
    removeEventListener('focusin', enter);
  };
}
