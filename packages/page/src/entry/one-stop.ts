import type { RefObject } from 'preact';
import { useEffect } from 'preact/hooks';

/** What can have the focus in a row; not what lies in a list that opens from it. */
export const STOPS = ':is(button, summary, select, input):not(:disabled, .unseen, .menu-list *)';

/**
 * Makes a row of controls one stop of the Tab key, which comes back to the one that was left; at first to the one that `first` selects, else
 * to the first one. The row is marked `data-row`: arrow keys go along it (`shell/keys.ts`).
 */
export function useOneStop(row: RefObject<HTMLElement | null>, first?: string): void {
  useEffect(() => keepOneStop(row.current!, first), []);
}

function keepOneStop(row: HTMLElement, first?: string): () => void {
  let stop: HTMLElement | null = null;
  row.dataset.row = '';
  const mark = () => {
    const all = stopsOf(row);
    if (stop === null || !all.includes(stop)) stop = all.find((each) => first && each.matches(first)) ?? all[0] ?? null;
    for (const each of all) each.tabIndex = each === stop ? 0 : -1;
  };
  const enter = ({ target }: FocusEvent) => {
    if (!(target as Element).matches(STOPS)) return;
    stop = target as HTMLElement;
    mark();
  };
  // What is shown of the row changes with the room it has.
  const sized = new ResizeObserver(mark);
  const changed = new MutationObserver(mark);
  sized.observe(row);
  changed.observe(row, { childList: true, subtree: true });
  row.addEventListener('focusin', enter);
  return () => {
    sized.disconnect();
    changed.disconnect();
    row.removeEventListener('focusin', enter);
  };
}

/** What of a row can have the focus, as it is shown now. */
export function stopsOf(row: HTMLElement): HTMLElement[] {
  return [...row.querySelectorAll<HTMLElement>(STOPS)].filter((each) => each.offsetParent !== null);
}
