import { rememberDesk, takeNewDesk } from './claim.ts';
import type { Holds } from './holds.ts';

/** Under which id the desk of this tab is kept; a reload comes back to it, and no other tab holds it. */
export interface Place {
  readonly id: string;
  /** Goes to an id that is held already. */
  goTo(id: string): void;
  goToNew(): Promise<void>;
}

/** The place of a tab that holds the id `first`. */
export function createPlace(first: string, session: Storage | null, holds: Holds): Place {
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
