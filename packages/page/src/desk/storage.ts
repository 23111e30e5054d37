import type { Doc } from './doc.ts';

/** What a browser keeps of one desk. */
export interface Kept {
  readonly version: 1;
  readonly doc: Doc;
  /** What was typed and not yet readable, by path. */
  readonly drafts: Readonly<Record<string, string>>;
  readonly savedAt: number;
}

/** A desk kept in this browser by an id. */
export interface KeptDesk {
  readonly id: string;
  readonly kept: Kept;
}

const PREFIX = 'fielded.desk.';
/** Jobs that are kept besides those open now. */
const MOST_KEPT = 30;

/** Writes what lies on a desk. Whether it could be: a full or forbidden store says false. */
export function keepDesk(store: Storage, id: string, kept: Kept): boolean {
  try {
    store.setItem(PREFIX + id, JSON.stringify(kept));
    return true;
  } catch {
    return false;
  }
}

/** What lies on the desk of this id; null when nothing readable does. */
export function readDesk(store: Storage, id: string): Kept | null {
  try {
    const kept = JSON.parse(store.getItem(PREFIX + id) ?? 'null') as Kept | null;
    return kept?.version === 1 && kept.doc?.data !== undefined ? kept : null;
  } catch {
    return null;
  }
}

/** All desks kept, the last used first. */
export function listDesks(store: Storage): KeptDesk[] {
  const ids = Array.from({ length: store.length }, (_, i) => store.key(i) ?? '')
    .filter((key) => key.startsWith(PREFIX))
    .map((key) => key.slice(PREFIX.length));
  return ids
    .flatMap((id) => {
      const kept = readDesk(store, id);
      return kept === null ? [] : [{ id, kept }];
    })
    .sort((one, other) => other.kept.savedAt - one.kept.savedAt);
}

/** Clears away the oldest desks past the number kept, never `mine`. */
export function clearOldDesks(store: Storage, mine: string): void {
  for (const { id } of listDesks(store).slice(MOST_KEPT)) if (id !== mine) store.removeItem(PREFIX + id);
}
