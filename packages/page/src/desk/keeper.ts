import { readJobData } from '@fielded/core';
import { effect } from '@preact/signals';
import { isGroup, setAt } from '../job/data.ts';
import { type Claim, newId, rememberDesk, takeNewDesk } from './claim.ts';
import type { Desk } from './desk.ts';
import { type Doc, isSameFile } from './doc.ts';
import { advance, beginHistory } from './history.ts';
import type { Holds } from './holds.ts';
import { forgetHistory, forgetOtherHistories, keepHistory, recallHistory } from './kept-history.ts';
import {
  clearOldDesks,
  deskText,
  holdsWork,
  type Kept,
  keepDesk,
  listDesks,
  notesText,
  putDeskText,
  putNotesText,
  readDesk,
  removeDesk,
} from './storage.ts';

/** A job in this browser, for the list of them. */
export interface EarlierJob {
  readonly id: string;
  readonly title: string;
  readonly fileName: string;
  readonly savedAt: number;
  /** null for one that cannot be read here. */
  readonly doc: Doc | null;
}

/** How a file came to lie on the desk: for the first time, again, or again with what was changed in it here. */
type Laid = 'fresh' | 'again' | 'changed';

/** How it went: done, not while another tab has the job open, or there is no room. */
export type Done = 'done' | 'open' | 'full';

/** Keeps what lies on the desk in this browser, and brings earlier jobs back. */
export interface Keeper {
  /** The id of the job on the desk: what is noted beside it is kept under that. */
  jobId(): string;
  earlier(): EarlierJob[];
  /** Leaves the job where it is kept and goes on at a new place. */
  putAside(): Promise<void>;
  /** Lays a file on a desk: on the one that it lay on before, if it is the same; else on a new one, the job before an undo away if `undoable`. */
  layFile(desk: Desk, doc: Doc, undoable?: boolean): Promise<Laid>;
  /** Goes to an earlier job; to a copy of it where another tab has it open. Whether it could be read, and whether it is a copy. */
  bringBack(desk: Desk, id: string): Promise<'there' | 'copy' | 'unreadable'>;
  /** Gives a job another name; not one that another tab has open. */
  rename(id: string, title: string): Promise<Done>;
  copy(id: string): Done;
  /** Takes a job away, not one that another tab has open; `restore` brings it back. */
  remove(id: string): Promise<{ readonly done: Done; readonly restore: () => void }>;
  /** The text of a job as it is kept, for saving what cannot be read. */
  textOf(id: string): string | null;
  /** Writes every change as it is made. */
  watch(desk: Desk): void;
}

/** How long after a change the steps of undo are kept, ms. */
const HISTORY_PAUSE = 400;

/** A keeper that writes under the desk that this tab holds. `store` is null where the browser allows none. */
export function createKeeper(claim: Claim, store: Storage | null, session: Storage | null, holds: Holds): Keeper {
  let id = claim.id;
  const goTo = (next: string) => {
    if (next !== id) holds.letGo(id);
    id = next;
    rememberDesk(session, id);
  };
  const newPlace = async () => {
    const before = id;
    id = await takeNewDesk(session, holds);
    holds.letGo(before);
  };
  const lay = (desk: Desk, kept: Kept) => {
    desk.lay(recallHistory(store, id, kept.doc), kept.drafts);
    desk.units.value = desk.job.value.units;
    desk.trace.value = null;
  };
  const change = (from: string, to: string, next: (kept: Kept) => Kept): Done => {
    const found = store && readDesk(store, from);
    const done = store !== null && found?.kind === 'kept' && keepDesk(store, to, next(found.kept));
    return done ? 'done' : 'full';
  };
  /** Does something to a job that no other tab has open. Without locks nobody can say. */
  const alone = async (from: string, act: () => Done): Promise<Done> => {
    if (!(await holds.take(from)) && (await holds.listOpen()) !== null) return 'open';
    const done = act();
    holds.letGo(from);
    return done;
  };
  return {
    jobId: () => id,
    earlier: () => (store === null ? [] : listEarlier(store, id)),
    putAside: newPlace,
    async layFile(desk, doc, undoable = false) {
      const same = store === null ? null : await takeSameFile(store, id, doc, holds);
      if (same !== null) {
        goTo(same.id);
        const changed = holdsWork(same.kept);
        lay(desk, changed || isSameFile(same.kept.doc, doc) ? same.kept : { ...same.kept, doc, drafts: {} });
        return changed ? 'changed' : 'again';
      }
      await newPlace();
      desk.lay(undoable ? advance(desk.history.peek(), doc) : beginHistory(doc));
      desk.units.value = desk.job.value.units;
      desk.trace.value = null;
      return 'fresh';
    },
    async bringBack(desk, from) {
      const found = store && readDesk(store, from);
      if (found?.kind !== 'kept' || !isReadable(found.kept.doc)) return 'unreadable';
      const own = await holds.take(from);
      if (own) goTo(from);
      else await newPlace();
      lay(desk, found.kept);
      return own ? 'there' : 'copy';
    },
    rename: (from, title) =>
      alone(from, () =>
        change(from, from, (kept) => ({ ...kept, doc: { ...kept.doc, data: setAt(kept.doc.data, 'title', title) } })),
      ),
    copy: (from) =>
      change(from, newId(), (kept) => {
        const title = `${titleOf(kept.doc)} (copy)`;
        const { asOpened: _, ...doc } = kept.doc;
        return { ...kept, savedAt: Date.now(), doc: { ...doc, data: setAt(doc.data, 'title', title) } };
      }),
    async remove(from) {
      const text = store && deskText(store, from);
      const notes = store && notesText(store, from);
      const done = await alone(from, () => {
        if (store !== null) removeDesk(store, from);
        return 'done';
      });
      const restore = () => {
        if (store !== null && text !== null) putDeskText(store, from, text);
        if (store !== null && notes !== null) putNotesText(store, from, notes);
      };
      return { done, restore };
    },
    textOf: (from) => store && deskText(store, from),
    watch(desk) {
      if (store === null) {
        desk.saving.value = 'blocked';
        return;
      }
      watchJob(desk, store, () => id);
      watchHistory(desk, store, () => id);
      void holds.listOpen().then((open) => clearOldDesks(store, open && new Set([...open, id])));
    },
  };
}

/** Whether a job can be read as it is. */
export function isReadable(doc: Doc): boolean {
  try {
    return readJobData(doc.data, doc.shop?.data).job !== null;
  } catch {
    return false;
  }
}

/** The desk that a file lay on before and that is free: with the same text, or with an earlier one and nothing changed since. */
async function takeSameFile(
  store: Storage,
  mine: string,
  doc: Doc,
  holds: Holds,
): Promise<{ readonly id: string; readonly kept: Kept } | null> {
  const desks = listDesks(store).flatMap(({ id, found }) => (found.kind === 'kept' ? [{ id, kept: found.kept }] : []));
  const same = desks.filter(({ kept }) => isSameFile(kept.doc, doc) && isReadable(kept.doc));
  const older = desks.filter(({ kept }) => kept.doc.fileName === doc.fileName && isOlder(kept, doc));
  for (const desk of [...same, ...older]) {
    if (desk.id === mine || (await holds.take(desk.id))) return desk;
    // Without locks nobody knows who has it open: what holds no work can be shared unharmed.
    if ((await holds.listOpen()) === null && !holdsWork(desk.kept)) return desk;
  }
  return null;
}

/** An earlier state of the same file in which nothing was changed here: only the same title and name make it that. */
function isOlder(kept: Kept, doc: Doc): boolean {
  return kept.doc.source !== null && !holdsWork(kept) && titleOf(kept.doc) === titleOf(doc);
}

function listEarlier(store: Storage, mine: string): EarlierJob[] {
  return listDesks(store)
    .filter((desk) => desk.id !== mine)
    .map(({ id, found }) =>
      found.kind === 'unreadable'
        ? { id, title: 'Cannot be read here', fileName: '', savedAt: 0, doc: null }
        : {
            id,
            title: titleOf(found.kept.doc),
            fileName: found.kept.doc.source === null ? '' : found.kept.doc.fileName,
            savedAt: found.kept.savedAt,
            doc: found.kept.doc,
          },
    );
}

function titleOf({ data }: Doc): string {
  return isGroup(data) ? String(data.title ?? 'Untitled job') : 'Untitled job';
}

function watchJob(desk: Desk, store: Storage, id: () => string): void {
  effect(() => {
    const kept = { version: 1, doc: desk.doc.value, drafts: desk.drafts.value, savedAt: Date.now() } as const;
    // A drag is written when the hand lets go.
    if (desk.moving.value !== null) return;
    const put = () => keepDesk(store, id(), kept);
    desk.saving.value = put() || makeRoom(store, id(), put) ? 'saved' : isBlocked(store) ? 'blocked' : 'full';
  });
}

function watchHistory(desk: Desk, store: Storage, id: () => string): void {
  let wait: ReturnType<typeof setTimeout> | undefined;
  const write = () => {
    clearTimeout(wait);
    wait = undefined;
    keepHistory(store, id(), desk.history.peek());
  };
  effect(() => {
    void desk.history.value;
    if (desk.moving.value !== null) return;
    clearTimeout(wait);
    wait = setTimeout(write, HISTORY_PAUSE);
  });
  globalThis.addEventListener?.('pagehide', () => wait !== undefined && write());
}

/** A full store gives up steps of undo before a job. */
function makeRoom(store: Storage, id: string, put: () => boolean): boolean {
  try {
    if (forgetOtherHistories(store, id) && put()) return true;
    forgetHistory(store, id);
    return put();
  } catch {
    return false;
  }
}

/** Whether nothing at all can be stored, rather than nothing more. */
function isBlocked(store: Storage): boolean {
  try {
    store.setItem('fielded.try', '1');
    store.removeItem('fielded.try');
    return false;
  } catch {
    return listDesks(store).length === 0;
  }
}
