import type { JSX, RefObject } from 'preact';
import { Later } from '../desk/later.tsx';

/** Under a field that is being typed in, where the screen is touched: the keys that its own keyboard hides. */
export function KeysAtHand({ field }: { field: RefObject<HTMLInputElement | null> }): JSX.Element | null {
  return matchMedia('(pointer: coarse)').matches ? <Later load={loadKeyStrip} field={field} /> : null;
}

const loadKeyStrip = () => import('./key-strip.tsx').then(({ KeyStrip }) => KeyStrip);
