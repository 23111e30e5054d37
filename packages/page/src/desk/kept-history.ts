import { digestOf } from './digest.ts';
import type { Doc } from './doc.ts';
import { beginHistory, type History } from './history.ts';

/** How many steps of undo, and of redo, outlive a reload. */
const MOST_STEPS = 80;
/** The most text they may take, characters: they must not crowd out the jobs themselves. */
const MOST_TEXT = 300_000;
const PREFIX = 'fielded.past.';

/** A state as it is kept: its data, and what else differs from the job on the desk. */
type Step = Partial<Pick<Doc, 'source' | 'fileName' | 'shop' | 'asOpened'>> & Pick<Doc, 'data'>;

interface KeptHistory {
  /** The job on the desk that these steps belong to. */
  readonly of: string;
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

/** Keeps the steps of undo beside a desk: the nearest, as many as there is room for. */
export function keepHistory(store: Storage, id: string, { past, present, future }: History<Doc>): void {
  const packSteps = (docs: readonly Doc[]) => docs.map((doc) => pack(doc, present));
  // Halve the steps until their text fits.
  let count = MOST_STEPS;
  let text = '';
  do {
    const kept: KeptHistory = {
      of: digestOf(present.data),
      past: packSteps(past.slice(-count)),
      future: packSteps(future.slice(0, count)),
    };
    text = JSON.stringify(kept);
    count = Math.floor(count / 2);
  } while (text.length > MOST_TEXT && count > 0);
  try {
    if (past.length + future.length === 0 || text.length > MOST_TEXT) store.removeItem(PREFIX + id);
    else store.setItem(PREFIX + id, text);
  } catch {
    forgetHistory(store, id);
  }
}

/** The history kept for the job on a desk; without steps, where it is of another job or cannot be read. */
export function recallHistory(store: Storage | null, id: string, present: Doc): History<Doc> {
  const plain = beginHistory(present);
  try {
    const kept = JSON.parse(store?.getItem(PREFIX + id) ?? 'null') as KeptHistory | null;
    if (kept?.of !== digestOf(present.data)) return plain;
    const unpack = (steps: readonly Step[]) => steps.map((step) => ({ ...present, ...step }));
    return { ...plain, past: unpack(kept.past), future: unpack(kept.future) };
  } catch {
    return plain;
  }
}

/** Removes the steps of undo of a desk. */
export function forgetHistory(store: Storage, id: string): void {
  try {
    store.removeItem(PREFIX + id);
  } catch {
    // A store that lets nothing be removed keeps it.
  }
}

/** Removes the steps of undo of every desk but this one, to make room; false where there were none. */
export function forgetOtherHistories(store: Storage, id: string): boolean {
  const keys = Array.from({ length: store.length }, (_, i) => store.key(i) ?? '').filter(
    (key) => key.startsWith(PREFIX) && key !== PREFIX + id,
  );
  for (const key of keys) store.removeItem(key);
  return keys.length > 0;
}

function pack(doc: Doc, present: Doc): Step {
  return {
    data: doc.data,
    ...(doc.source !== present.source && { source: doc.source }),
    ...(doc.fileName !== present.fileName && { fileName: doc.fileName }),
    ...(doc.shop !== present.shop && { shop: doc.shop }),
    ...(doc.asOpened !== present.asOpened && doc.asOpened !== undefined && { asOpened: doc.asOpened }),
  };
}
