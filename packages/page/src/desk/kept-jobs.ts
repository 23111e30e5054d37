import { setAt } from '../job/data.ts';
import { newId } from './claim.ts';
import { type Doc, titleOf } from './doc.ts';
import type { Holds } from './holds.ts';
import {
  deskText,
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

/** What came of an act on a kept job: done; another tab has it open; or the browser has no room. */
export type Done = 'done' | 'open' | 'full';

/** The jobs kept in this browser, and what is done to them where they are kept. */
export interface KeptJobs {
  /** All but the one on the desk, the last used first. */
  earlier(): EarlierJob[];
  /** Gives a job another title; not one that another tab has open. */
  rename(id: string, title: string): Promise<Done>;
  /** Copies a job under a new id and title. */
  copy(id: string): Done;
  /** Deletes a job, not one that another tab has open; `restore` brings it back. */
  remove(id: string): Promise<{ readonly done: Done; readonly restore: () => void }>;
  /** The text of a job as it is kept, for saving what cannot be read. */
  textOf(id: string): string | null;
}

/** Where the jobs of this browser are kept. */
export interface Shelf {
  /** null where the browser allows none. */
  readonly store: Storage | null;
  readonly holds: Holds;
  /** The id of the job on the desk. */
  readonly mine: () => string;
}

/** The jobs kept on a shelf. */
export function keptJobs({ store, mine, holds }: Shelf): KeptJobs {
  const write = (from: string, to: string, next: (kept: Kept) => Kept): Done => {
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
    earlier: () => (store === null ? [] : listEarlier(store, mine())),
    rename: (from, title) =>
      alone(from, () => write(from, from, (kept) => ({ ...kept, doc: withTitle(kept.doc, title) }))),
    copy: (from) =>
      write(from, newId(), (kept) => {
        const { asOpened: _, ...doc } = withTitle(kept.doc, `${titleOf(kept.doc)} (copy)`);
        return { ...kept, savedAt: Date.now(), doc };
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
  };
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

function withTitle(doc: Doc, title: string): Doc {
  return { ...doc, data: setAt(doc.data, 'title', title) };
}
