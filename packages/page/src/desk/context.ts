import { type Context, createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Desk } from './desk.ts';

export const DeskContext: Context<Desk | null> = createContext<Desk | null>(null);

/** The desk that components around this one were given. Throws RangeError outside of any. */
export function useDesk(): Desk {
  const desk = useContext(DeskContext);
  if (desk === null) throw new RangeError('no desk here');
  return desk;
}
