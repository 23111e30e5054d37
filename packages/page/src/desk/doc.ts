import type { Data } from '../job/data.ts';
import { digestOf } from './digest.ts';

/** A shop file as opened beside a job. */
export interface ShopDoc {
  readonly name: string;
  readonly data: Data;
  readonly text: string;
  /** The id under which this browser keeps the picture of its logo, if it was given. */
  readonly logo?: string;
}

/** What lies on the desk: the job as plain data, and what it came from. */
export interface Doc {
  readonly data: Data;
  /** The file as it was opened, whose comments and order a save keeps; null for a job begun here. */
  readonly source: string | null;
  readonly fileName: string;
  readonly shop: ShopDoc | null;
  /** The digest of job and shop as they were opened; left out for a job begun here, which nothing else holds. */
  readonly asOpened?: string;
}

/** The same as it came from its file or as the example, so that a change can be told. */
export function asOpened(doc: Doc): Doc {
  return { ...doc, asOpened: digestOfDoc(doc) };
}

/** Whether there is something in it that its file does not hold. */
export function isChanged(doc: Doc): boolean {
  return doc.asOpened === undefined || doc.asOpened !== digestOfDoc(doc);
}

/** Whether two came from the same unchanged files. */
export function isSameFile(one: Doc, other: Doc): boolean {
  return (
    one.source !== null &&
    one.source === other.source &&
    one.fileName === other.fileName &&
    (one.shop?.text ?? null) === (other.shop?.text ?? null)
  );
}

function digestOfDoc({ data, shop }: Doc): string {
  return digestOf([data, shop?.data ?? null]);
}
