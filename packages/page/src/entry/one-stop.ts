import type { RefObject } from 'preact';
import { useEffect } from 'preact/hooks';

/** What can have the focus in a row; not what lies in a list that opens from it. */
const STOPS = ':is(button, summary, select, input):not(:disabled, .menu-list *)';

/**
 * Makes a row of controls one stop of the Tab key: the keys left and right go along it, Home and End to its ends. Tab comes back to the
 * one that was left; at first to the one that `first` selects, else to the first one.
 */
export function useOneStop(row: RefObject<HTMLElement | null>, first?: string): void {
  useEffect(() => keepOneStop(row.current!, first), []);
}

function keepOneStop(row: HTMLElement, first?: string): () => void {
  let stop: HTMLElement | null = null;
  const stops = () => [...row.querySelectorAll<HTMLElement>(STOPS)].filter((each) => each.offsetParent !== null);
  const mark = () => {
    const all = stops();
    if (stop === null || !all.includes(stop))
      stop = (first === undefined ? null : all.find((each) => each.matches(first))) ?? all[0] ?? null;
    for (const each of all) each.tabIndex = each === stop ? 0 : -1;
  };
  const enter = ({ target }: FocusEvent) => {
    if (!(target as Element).matches(STOPS)) return;
    stop = target as HTMLElement;
    mark();
  };
  const go = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey || !(event.target as Element).matches(STOPS)) return;
    const all = stops();
    const at = all.indexOf(event.target as HTMLElement);
    const to = { ArrowLeft: at - 1, ArrowRight: at + 1, Home: 0, End: -1 }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    all.at(to % all.length)?.focus();
  };
  // What is shown of the row changes with the room it has.
  const sized = new ResizeObserver(mark);
  const changed = new MutationObserver(mark);
  sized.observe(row);
  changed.observe(row, { childList: true, subtree: true });
  row.addEventListener('focusin', enter);
  row.addEventListener('keydown', go);
  return () => {
    sized.disconnect();
    changed.disconnect();
    row.removeEventListener('focusin', enter);
    row.removeEventListener('keydown', go);
  };
}
