import type { Desk } from './desk.ts';
import { type Doc, isReadable, isSameFile, titleOf } from './doc.ts';
import { advance, beginHistory } from './history.ts';
import type { Holds } from './holds.ts';
import { recallHistory } from './kept-history.ts';
import type { Place } from './place.ts';
import { holdsWork, type Kept, listDesks, readDesk } from './storage.ts';

/** How a file was laid on the desk: for the first time, again, or again with the changes made to it here. */
type Laid = 'fresh' | 'again' | 'changed';

/** Lays other jobs on the desk. */
export interface Laying {
  /** Lays a file on the desk: as it was kept, if the same file lay here before; else under a new id, the job before an undo away if `undoable`. */
  layFile(desk: Desk, doc: Doc, undoable?: boolean): Promise<Laid>;
  /** Goes to an earlier job; to a copy of it where another tab has it open. */
  bringBack(desk: Desk, id: string): Promise<'there' | 'copy' | 'unreadable'>;
}

/** Lays files and earlier jobs on the desk. */
export function createLaying(store: Storage | null, place: Place, holds: Holds): Laying {
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
