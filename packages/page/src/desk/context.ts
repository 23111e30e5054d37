import { type Context, createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Desk } from './desk.ts';

export const DeskContext: Context<Desk | null> = createContext<Desk | null>(null);

export function useDesk(): Desk {
  const desk = useContext(DeskContext);
  if (desk === null) throw new RangeError('no desk here');
  return desk;
}
