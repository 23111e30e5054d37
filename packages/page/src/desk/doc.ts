import { type ReadJob, readJobData } from '@fielded/core';
import { type Data, isGroup } from '../job/data.ts';
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

/** The same, marked as it came from its file or as the example: `isChanged` compares with this. */
export function asOpened(doc: Doc): Doc {
  return { ...doc, asOpened: digestOfDoc(doc) };
}

/** Whether it holds something that its file does not. */
export function isChanged(doc: Doc): boolean {
  return doc.asOpened === undefined || doc.asOpened !== digestOfDoc(doc);
}

/** Whether two come from job and shop files of the same names and texts. */
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

/** Reads a job with its shop. */
export function readDoc({ data, shop }: Pick<Doc, 'data' | 'shop'>): ReadJob {
  return readJobData(data, shop?.data);
}

/** Whether the engine can read a job. */
export function isReadable(doc: Doc): boolean {
  try {
    return readDoc(doc).job !== null;
  } catch {
    return false;
  }
}

/** The title of a job; a job may have none. */
export function titleOf({ data }: Doc): string {
  return isGroup(data) ? String(data.title ?? 'Untitled job') : 'Untitled job';
}
