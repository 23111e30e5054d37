import { type Kept, listDesks, readDesk } from './storage.ts';

/** The desk that this tab works at, what lay on it, and whether that is a copy of another tab's. */
export interface Claim {
  readonly id: string;
  readonly kept: Kept | null;
  readonly copied: boolean;
}

const SESSION_KEY = 'fielded.desk';

/**
 * Takes a desk for this tab alone: its own from before a reload, else the last used one that no tab holds, else a new one
 * with a copy of the last job. Two tabs never hold the same: a lock of the browser's is kept until the tab closes.
 */
export async function claimDesk(store: Storage, session: Storage, locks: LockManager | undefined): Promise<Claim> {
  const own = session.getItem(SESSION_KEY);
  const desks = listDesks(store);
  const candidates = [...(own === null ? [] : [own]), ...desks.map(({ id }) => id).filter((id) => id !== own)];
  for (const id of candidates) {
    if (!(await (id === own ? holdSoon(locks, id) : holdLock(locks, id)))) continue;
    session.setItem(SESSION_KEY, id);
    return { id, kept: readDesk(store, id), copied: false };
  }
  const id = crypto.randomUUID();
  await holdLock(locks, id);
  session.setItem(SESSION_KEY, id);
  const source = own === null ? (desks[0]?.kept ?? null) : readDesk(store, own);
  return { id, kept: source, copied: source !== null };
}

/** The lock of before a reload may be let go only a moment after the new page starts. */
async function holdSoon(locks: LockManager | undefined, id: string): Promise<boolean> {
  for (let round = 0; locks !== undefined && round < 8; round++) {
    if (await holdLock(locks, id)) return true;
    await new Promise((settle) => setTimeout(settle, 60));
  }
  return false;
}

/** A new desk for this tab, leaving the one before as it is. */
export async function takeNewDesk(session: Storage, locks: LockManager | undefined): Promise<string> {
  const id = crypto.randomUUID();
  await holdLock(locks, id);
  session.setItem(SESSION_KEY, id);
  return id;
}

/** Whether the lock is this tab's now; it is let go when the tab closes. Without locks nothing is ever shared. */
function holdLock(locks: LockManager | undefined, id: string): Promise<boolean> {
  if (locks === undefined) return Promise.resolve(false);
  return new Promise((settle) => {
    locks
      .request(`fielded.desk.${id}`, { ifAvailable: true }, (lock) => {
        settle(lock !== null);
        return lock === null ? undefined : new Promise<void>(() => {});
      })
      .catch(() => settle(false));
  });
}
