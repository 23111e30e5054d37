import { batch, type Signal, signal } from '@preact/signals';
import type { Desk } from './desk.ts';
import type { Doc } from './doc.ts';
import { advance, type History, redo, settle, undo } from './history.ts';

/** Makes the next state of the desk, as a step of undo; steps with the same key in a row are one. */
export type Put = (next: Doc, key?: string) => void;

type Steps = Pick<Desk, 'drafts' | 'sumFaults' | 'settle' | 'undo' | 'redo' | 'replace' | 'lay'> & {
  readonly put: Put;
};

/** The steps of undo, and what was half typed meanwhile. */
export function createSteps(history: Signal<History<Doc>>): Steps {
  const drafts = signal<Readonly<Record<string, string>>>({});
  const sumFaults = signal<Readonly<Record<string, string>>>({});
  // A job is told by the state it was laid on the desk in: changes keep the job, another file does not.
  const firsts = new WeakMap<Doc, Doc>();
  const firstOf = (state: Doc) => firsts.get(state) ?? state;
  const layWith = (next: History<Doc>, typed: Readonly<Record<string, string>>) =>
    batch(() => {
      drafts.value = typed;
      sumFaults.value = {};
      history.value = next;
    });
  const step = (next: History<Doc> | null) => {
    if (next === null) return;
    // What was half typed belongs to the job that was on the desk.
    if (firstOf(next.present) === firstOf(history.peek().present)) history.value = next;
    else layWith(next, {});
  };
  return {
    drafts,
    sumFaults,
    put(next, key) {
      const { present } = history.peek();
      firsts.set(next, firstOf(present));
      history.value = advance(history.peek(), next, key);
    },
    settle() {
      history.value = settle(history.value);
    },
    undo: () => step(undo(history.value)),
    redo: () => step(redo(history.value)),
    replace: (next) => layWith(advance(history.value, next), {}),
    lay: (next, typed = {}) => layWith(next, typed),
  };
}
