import type { Data } from '../job/data.ts';

/** A shop file as opened beside a job. */
export interface ShopDoc {
  readonly name: string;
  readonly data: Data;
  readonly text: string;
}

/** What lies on the desk: the job as plain data, and what it came from. */
export interface Doc {
  readonly data: Data;
  /** The file as it was opened, whose comments and order a save keeps; null for a job begun here. */
  readonly source: string | null;
  readonly fileName: string;
  readonly shop: ShopDoc | null;
}
