import { effect } from '@preact/signals';
import { isGroup } from '../job/data.ts';
import { type Claim, takeNewDesk } from './claim.ts';
import type { Desk } from './desk.ts';
import { clearOldDesks, keepDesk, listDesks, readDesk } from './storage.ts';

/** A job of before, kept in this browser. */
interface Earlier {
  readonly id: string;
  readonly title: string;
  readonly when: string;
}

/** Keeps what lies on the desk in this browser, and brings earlier jobs back. */
export interface Keeper {
  earlier(): Earlier[];
  /** Leaves the job where it is kept and goes on at a new place. */
  putAside(): Promise<void>;
  bringBack(desk: Desk, id: string): Promise<void>;
  /** Writes every change as it is made. */
  watch(desk: Desk): void;
}

/** A keeper that writes under the desk that this tab holds. `store` is null where the browser allows none. */
export function createKeeper(
  claim: Claim,
  store: Storage | null,
  session: Storage | null,
  locks: LockManager | undefined,
): Keeper {
  let id = claim.id;
  const newPlace = async () => {
    id = session === null ? crypto.randomUUID() : await takeNewDesk(session, locks);
  };
  return {
    earlier() {
      if (store === null) return [];
      return listDesks(store)
        .filter((desk) => desk.id !== id)
        .map((desk) => ({
          id: desk.id,
          title: isGroup(desk.kept.doc.data) ? String(desk.kept.doc.data.title ?? 'Untitled job') : 'Untitled job',
          when: new Date(desk.kept.savedAt).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' }),
        }));
    },
    putAside: newPlace,
    async bringBack(desk, from) {
      const kept = store && readDesk(store, from);
      if (!kept) return;
      // A copy: another tab may be at work on the job itself.
      await newPlace();
      desk.replace(kept.doc, false);
      desk.units.value = desk.job.value.units;
      desk.trace.value = null;
      desk.notice.value = { kind: 'note', text: 'Brought back, as a copy of what was kept.' };
    },
    watch(desk) {
      effect(() => {
        const kept = { version: 1, doc: desk.doc.value, drafts: desk.drafts.value, savedAt: Date.now() } as const;
        // A drag is written when the hand lets go.
        if (desk.moving.value !== null) return;
        const done = store !== null && keepDesk(store, id, kept);
        desk.saving.value = done ? 'saved' : 'failed';
      });
      if (store !== null) clearOldDesks(store, id);
    },
  };
}
