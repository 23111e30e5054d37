import type { RefObject } from 'preact';
import { useLayoutEffect } from 'preact/hooks';

/** The first thing to answer in a part. */
const FIRST = 'select, input:not([type="file"]), button';

/** Takes the focus into a part that has opened, closes it on Escape, and gives the focus back to what had it before. */
export function useOpenedPart(part: RefObject<HTMLElement | null>, close: () => void): void {
  // Its cleanup must come while the part is still there.
  useLayoutEffect(() => {
    const { current } = part;
    const before = document.activeElement;
    const listen = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || event.defaultPrevented) return;
      event.preventDefault();
      // From what is unfolded in it, a drawing begun perhaps, Escape goes to its name first.
      const fold = (event.target as Element).closest('details')?.querySelector('summary');
      if (fold && fold !== event.target && current?.contains(fold)) fold.focus();
      else close();
    };
    current?.querySelector<HTMLElement>(FIRST)?.focus({ preventScroll: true });
    current?.addEventListener('keydown', listen);
    return () => {
      current?.removeEventListener('keydown', listen);
      if (current?.contains(document.activeElement) && before instanceof HTMLElement) before.focus();
    };
  }, []);
}
