import type { Claim } from './claim.ts';
import type { Desk } from './desk.ts';
import { fetchPart } from './fetch-part.ts';
import type { Holds } from './holds.ts';
import type { Shelf } from './kept-jobs.ts';
import type { Laying } from './lay-kept.ts';
import { createPlace } from './place.ts';
import { clearOldDesks } from './storage.ts';
import { watchDesk } from './watch-desk.ts';

/** Keeps what lies on the desk in this browser, and brings earlier jobs back. */
export interface Keeper extends Laying {
  /** Where the other jobs are kept. */
  readonly shelf: Shelf;
  /** The id of the job on the desk; notes beside the job are kept under it. */
  jobId(): string;
  /** Leaves the job where it is kept; the desk goes on under a new id. */
  putAside(): Promise<void>;
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
