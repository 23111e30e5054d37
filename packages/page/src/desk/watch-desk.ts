import { effect } from '@preact/signals';
import type { Desk } from './desk.ts';
import { forgetHistory, forgetOtherHistories, keepHistory } from './kept-history.ts';
import { keepDesk, listDesks } from './storage.ts';

/** How long after a change the steps of undo are kept, ms. */
const HISTORY_PAUSE = 400;

/** Keeps the job on the desk and its steps of undo at every change, under the id that `id` gives then. */
export function watchDesk(desk: Desk, store: Storage, id: () => string): void {
  watchJob(desk, store, id);
  watchHistory(desk, store, id);
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

/** Tries `put` again with less in the store: a full store gives up steps of undo before a job. */
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
