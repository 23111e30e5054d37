/** The desks that this tab has open. The browser holds a lock for each until it is let go or the tab closes. */
export interface Holds {
  /** Takes a desk for this tab alone; false where another tab has it, or the browser has no locks. */
  take(id: string): Promise<boolean>;
  /** Takes the tab's own desk again after a reload, waiting for the lock of the closed page to go. */
  takeAgain(id: string): Promise<boolean>;
  letGo(id: string): void;
  /** The desks of all open tabs; null where the browser cannot say. */
  listOpen(): Promise<ReadonlySet<string> | null>;
}

const PREFIX = 'fielded.desk.';
/** How often `takeAgain` asks for a lock, and how long it waits in between, ms. */
const ROUNDS = 8;
const PAUSE = 60;

/** Holds desks by the browser's locks; without them `take` always fails, so that no tab takes the desk of another. */
export function createHolds(locks: LockManager | undefined): Holds {
  const releases = new Map<string, () => void>();
  const take = (id: string): Promise<boolean> => {
    if (releases.has(id)) return Promise.resolve(true);
    if (locks === undefined) return Promise.resolve(false);
    return new Promise((settle) => {
      const hold = (lock: Lock | null) => {
        settle(lock !== null);
        return lock === null ? undefined : new Promise<void>((release) => releases.set(id, release));
      };
      // A browser that forbids locks throws at once, or later.
      try {
        locks.request(PREFIX + id, { ifAvailable: true }, hold).catch(() => settle(false));
      } catch {
        settle(false);
      }
    });
  };
  return {
    take,
    async takeAgain(id) {
      // Without locks a tab can only trust that its own desk is its own.
      if (locks === undefined) return true;
      for (let round = 0; round < ROUNDS; round++) {
        if (await take(id)) return true;
        await new Promise((settle) => setTimeout(settle, PAUSE));
      }
      return false;
    },
    letGo(id) {
      releases.get(id)?.();
      releases.delete(id);
    },
    async listOpen() {
      try {
        const held = (await locks?.query())?.held;
        const names = held?.flatMap(({ name }) => (name?.startsWith(PREFIX) ? [name.slice(PREFIX.length)] : []));
        return names === undefined ? null : new Set(names);
      } catch {
        return null;
      }
    },
  };
}
