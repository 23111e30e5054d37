import { type Claim, rememberDesk, takeNewDesk } from './claim.ts';
import type { Desk } from './desk.ts';
import type { Doc } from './doc.ts';
import { fetchPart } from './fetch-part.ts';
import type { Holds } from './holds.ts';
import type { Shelf } from './kept-jobs.ts';
import { clearOldDesks } from './storage.ts';
import { watchDesk } from './watch-desk.ts';

/** How a file was laid on the desk: for the first time, again, or again with the changes made to it here. */
type Laid = 'fresh' | 'again' | 'changed';

/** Keeps what lies on the desk in this browser, and brings earlier jobs back. */
export interface Keeper {
  /** Where the other jobs are kept. */
  readonly shelf: Shelf;
  /** The id of the job on the desk; notes beside the job are kept under it. */
  jobId(): string;
  /** Leaves the job where it is kept; the desk goes on under a new id. */
  putAside(): Promise<void>;
  /** Lays a file on the desk: as it was kept, if the same file lay here before; else under a new id, the job before an undo away if `undoable`. */
  layFile(desk: Desk, doc: Doc, undoable?: boolean): Promise<Laid>;
  /** Goes to an earlier job; to a copy of it where another tab has it open. */
  bringBack(desk: Desk, id: string): Promise<'there' | 'copy' | 'unreadable'>;
  /** Writes every change as it is made. */
  watch(desk: Desk): void;
}

/** A keeper that writes under the id that this tab holds. `store` is null where the browser allows none. */
export function createKeeper(claim: Claim, store: Storage | null, session: Storage | null, holds: Holds): Keeper {
  const place = createPlace(claim.id, session, holds);
  // Fetched when another job is laid on the desk.
  const laying = async () => (await fetchPart(() => import('./lay-kept.ts'))).createLaying(store, place, holds);
  return {
    shelf: { store, holds, mine: () => place.id },
    jobId: () => place.id,
    putAside: () => place.goToNew(),
    layFile: async (...given) => (await laying()).layFile(...given),
    bringBack: async (...given) => (await laying()).bringBack(...given),
    watch(desk) {
      if (store === null) {
        desk.saving.value = 'blocked';
        return;
      }
      watchDesk(desk, store, () => place.id);
      void holds.listOpen().then((open) => clearOldDesks(store, open && new Set([...open, place.id])));
    },
  };
}

/** Under which id the desk of this tab is kept; a reload comes back to it, and no other tab holds it. */
export interface Place {
  readonly id: string;
  /** Goes to an id that is held already. */
  goTo(id: string): void;
  goToNew(): Promise<void>;
}

function createPlace(first: string, session: Storage | null, holds: Holds): Place {
  let id = first;
  return {
    get id() {
      return id;
    },
    goTo(next) {
      if (next !== id) holds.letGo(id);
      id = next;
      rememberDesk(session, id);
    },
    async goToNew() {
      const before = id;
      id = await takeNewDesk(session, holds);
      holds.letGo(before);
    },
  };
}
