/** Earlier states, the present one and undone ones, without limit. Changes in a row with the same `key` are one step. */
export interface History<S> {
  readonly past: readonly S[];
  readonly present: S;
  readonly future: readonly S[];
  readonly key: string | null;
}

export function beginHistory<S>(present: S): History<S> {
  return { past: [], present, future: [], key: null };
}

/** The history with a new state. With the key of the change before, other than null, it replaces the present state. */
export function advance<S>(history: History<S>, present: S, key: string | null = null): History<S> {
  if (present === history.present) return history;
  if (key !== null && key === history.key) return { ...history, present, future: [] };
  return { past: [...history.past, history.present], present, future: [], key };
}

/** The history in which the next change is a step of its own, whatever its key. */
export function settle<S>(history: History<S>): History<S> {
  return history.key === null ? history : { ...history, key: null };
}

/** The history one step back; null where there is none. */
export function undo<S>({ past, present, future }: History<S>): History<S> | null {
  const before = past[past.length - 1];
  if (before === undefined) return null;
  return { past: past.slice(0, -1), present: before, future: [present, ...future], key: null };
}

/** The history one step forward again; null where there is none. */
export function redo<S>({ past, present, future }: History<S>): History<S> | null {
  const [next, ...later] = future;
  if (next === undefined) return null;
  return { past: [...past, present], present: next, future: later, key: null };
}
