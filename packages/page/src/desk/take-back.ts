import type { Desk } from './desk.ts';

/**
 * Takes back what was typed in a field, whose changes share the key: not what came before it, nor where that was undone already. False
 * where there was nothing to take back.
 */
export function takeBack(desk: Desk, key: string): boolean {
  const typed = key !== '' && desk.history.peek().key === key;
  if (typed) desk.undo();
  desk.settle();
  return typed;
}
