import { type Claim, rememberDesk, takeNewDesk } from './claim.ts';
import type { Desk } from './desk.ts';
import { type Doc, isReadable, isSameFile, titleOf } from './doc.ts';
import { advance, beginHistory } from './history.ts';
import type { Holds } from './holds.ts';
import { recallHistory } from './kept-history.ts';
import type { Shelf } from './kept-jobs.ts';
import { clearOldDesks, holdsWork, type Kept, listDesks, readDesk } from './storage.ts';
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
  return {
    shelf: { store, holds, mine: () => place.id },
    jobId: () => place.id,
    putAside: () => place.goToNew(),
    ...createLaying(store, place, holds),
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
interface Place {
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

/** Lays files and earlier jobs on the desk. */
function createLaying(store: Storage | null, place: Place, holds: Holds): Pick<Keeper, 'layFile' | 'bringBack'> {
  const layKept = (desk: Desk, kept: Kept) => {
    desk.lay(recallHistory(store, place.id, kept.doc), kept.drafts);
    showAfresh(desk);
  };
  return {
    async layFile(desk, doc, undoable = false) {
      const same = store === null ? null : await takeSameFile(store, place.id, doc, holds);
      if (same !== null) {
        place.goTo(same.id);
        const changed = holdsWork(same.kept);
        layKept(desk, changed || isSameFile(same.kept.doc, doc) ? same.kept : { ...same.kept, doc, drafts: {} });
        return changed ? 'changed' : 'again';
      }
      await place.goToNew();
      desk.lay(undoable ? advance(desk.history.peek(), doc) : beginHistory(doc));
      showAfresh(desk);
      return 'fresh';
    },
    async bringBack(desk, from) {
      const found = store && readDesk(store, from);
      if (found?.kind !== 'kept' || !isReadable(found.kept.doc)) return 'unreadable';
      const own = await holds.take(from);
      if (own) place.goTo(from);
      else await place.goToNew();
      layKept(desk, found.kept);
      return own ? 'there' : 'copy';
    },
  };
}

/** Another job on the desk is shown in its own unit, compared with nothing. */
function showAfresh(desk: Desk): void {
  desk.units.value = desk.job.value.units;
  desk.trace.value = null;
}

/** Takes the desk that a file lay on before, if it is free: with the same text, or with an earlier text and no change made here. */
async function takeSameFile(
  store: Storage,
  mine: string,
  doc: Doc,
  holds: Holds,
): Promise<{ readonly id: string; readonly kept: Kept } | null> {
  const desks = listDesks(store).flatMap(({ id, found }) => (found.kind === 'kept' ? [{ id, kept: found.kept }] : []));
  const same = desks.filter(({ kept }) => isSameFile(kept.doc, doc) && isReadable(kept.doc));
  const older = desks.filter(({ kept }) => isOlder(kept, doc));
  for (const desk of [...same, ...older]) {
    if (desk.id === mine || (await holds.take(desk.id))) return desk;
    // Without locks nobody knows who has it open: what holds no work can be shared unharmed.
    if ((await holds.listOpen()) === null && !holdsWork(desk.kept)) return desk;
  }
  return null;
}

/** Whether a kept job is a file of the same name and title, without a change made here: an earlier text of that file. */
function isOlder(kept: Kept, doc: Doc): boolean {
  const { source, fileName } = kept.doc;
  return source !== null && fileName === doc.fileName && titleOf(kept.doc) === titleOf(doc) && !holdsWork(kept);
}
