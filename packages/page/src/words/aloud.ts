import { type Signal, signal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';

/** What screen readers were told last, each under a number of its own (`shell/said.tsx`). */
export const said: Signal<readonly (readonly [number, string])[]> = signal([]);
/** So many stay there to be read again. */
const KEPT = 3;
/** A hand that types or moves rests so long before what came of it is told, ms. */
const REST = 700;

/** Tells screen readers something that is not shown, or is shown elsewhere than where the hand is. */
export function tell(words: string): void {
  const before = said.peek();
  said.value = [...before.slice(1 - KEPT), [(before.at(-1)?.[0] ?? 0) + 1, aloud(words)]];
}

/** Tells screen readers what words have become, once the hand rests: not at each key or step of a drag. Words it began with are not told. `rest`, ms. */
export function useTold(words: string, rest: number = REST): void {
  const before = useRef(words);
  useEffect(() => {
    if (words === before.current) return;
    const wait = setTimeout(() => {
      before.current = words;
      if (words !== '') tell(words);
    }, rest);
    return () => clearTimeout(wait);
  }, [words]);
}

/** Units as they are spoken, those that are not by themselves. */
export const UNITS: Readonly<Record<string, string>> = { mm: 'millimetres', in: 'inches' };

/**
 * Words with signs as they are spoken.
 *
 * @example aloud('goes in its full ≈1-3/8 in (1.3701 in)') // 'goes in its full about 1 3/8 inches (1.3701)'
 */
export function aloud(words: string): string {
  return words
    .replaceAll('≈', 'about ')
    .replace(/(\w) × (?=\d)/g, '$1 by ')
    .replace(/ in(.)\(([\d.]+) in\)/g, ' in$1($2)')
    .replace(/(\d)-\u2060?(\d+\/)/g, '$1 $2')
    .replace(/(\d)[ \u00A0](mm|in)\b/g, (_, figure, unit) => `${figure} ${UNITS[unit]}`);
}
