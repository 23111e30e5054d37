import type { Holds } from './holds.ts';
import { type Kept, listDesks, readDesk } from './storage.ts';

/** The desk that this tab works at, and what lay on it. */
export interface Claim {
  readonly id: string;
  readonly kept: Kept | null;
  /** Whether it is a copy of another tab's. */
  readonly copied: boolean;
  /** Whether something lay there that cannot be read; it stays where it is. */
  readonly unreadable: boolean;
}

const SESSION_KEY = 'fielded.desk';

/**
 * Takes a desk for this tab alone: its own from before a reload, else the last used one that no tab holds, else a new one
 * with a copy of the last job. Two tabs never hold the same desk. One that cannot be read is left, and a new one taken.
 */
export async function claimDesk(store: Storage | null, session: Storage | null, holds: Holds): Promise<Claim> {
  if (store === null) return newClaim(session, holds, null, false);
  const own = readOwn(session);
  const desks = listDesks(store);
  if (own !== null && (await holds.takeAgain(own))) {
    const found = readDesk(store, own);
    if (found.kind === 'unreadable') {
      holds.letGo(own);
      return newClaim(session, holds, null, true);
    }
    return { id: own, kept: found.kind === 'kept' ? found.kept : null, copied: false, unreadable: false };
  }
  for (const { id, found } of desks) {
    if (id === own || found.kind !== 'kept' || !(await holds.take(id))) continue;
    rememberDesk(session, id);
    return { id, kept: found.kept, copied: false, unreadable: false };
  }
  const source = own === null ? desks[0]?.found : readDesk(store, own);
  const copy = source?.kind === 'kept' ? source.kept : null;
  return newClaim(session, holds, copy, source?.kind === 'unreadable');
}

async function newClaim(session: Storage | null, holds: Holds, copy: Kept | null, unreadable: boolean): Promise<Claim> {
  return { id: await takeNewDesk(session, holds), kept: copy, copied: copy !== null, unreadable };
}

/** Takes a new desk for this tab and returns its id; the desk before stays as it is. */
export async function takeNewDesk(session: Storage | null, holds: Holds): Promise<string> {
  const id = newId();
  await holds.take(id);
  rememberDesk(session, id);
  return id;
}

/** An id that no other desk has. `crypto.randomUUID` would need a page that is served securely. */
export function newId(): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** Remembers the desk of this tab, so that a reload comes back to it. */
export function rememberDesk(session: Storage | null, id: string): void {
  try {
    session?.setItem(SESSION_KEY, id);
  } catch {
    // Without it a reload takes the last used desk.
  }
}

function readOwn(session: Storage | null): string | null {
  try {
    return session?.getItem(SESSION_KEY) ?? null;
  } catch {
    return null;
  }
}
