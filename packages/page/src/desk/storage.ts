import { isGroup } from '../job/data.ts';
import { type Doc, isChanged } from './doc.ts';

/** What a browser keeps of one desk. */
export interface Kept {
  readonly version: 1;
  readonly doc: Doc;
  /** What was typed and not yet readable, by path. */
  readonly drafts: Readonly<Record<string, string>>;
  readonly savedAt: number;
}

/** What was found under a desk's id. What cannot be read, or is of a newer version, is never written over. */
export type Found =
  | { readonly kind: 'none' }
  | { readonly kind: 'unreadable'; readonly text: string }
  | { readonly kind: 'kept'; readonly kept: Kept };

/** A desk in this browser by its id. */
export interface FoundDesk {
  readonly id: string;
  readonly found: Exclude<Found, { kind: 'none' }>;
}

const PREFIX = 'fielded.desk.';
/** How many jobs are kept before those that are the same as their files are cleared. */
const MOST_KEPT = 30;

/** Writes what lies on a desk; false where the store is full or forbidden. */
export function keepDesk(store: Storage, id: string, kept: Kept): boolean {
  return putDeskText(store, id, JSON.stringify(kept));
}

/** Writes a desk back, as the text that was read; false where the store is full or forbidden. */
export function putDeskText(store: Storage, id: string, text: string): boolean {
  try {
    store.setItem(PREFIX + id, text);
    return true;
  } catch {
    return false;
  }
}

/** The text that a desk is kept as; null for none. */
export function deskText(store: Storage, id: string): string | null {
  return textAt(store, PREFIX + id);
}

/** The notes beside a desk, as text; null for none. */
export function notesText(store: Storage, id: string): string | null {
  return textAt(store, notesKey(id));
}

/** Writes notes back, as the text that was read. */
export function putNotesText(store: Storage, id: string, text: string): void {
  try {
    store.setItem(notesKey(id), text);
  } catch {
    // A full store keeps the job rather than its notes.
  }
}

function textAt(store: Storage, key: string): string | null {
  try {
    return store.getItem(key);
  } catch {
    return null;
  }
}

/** The key under which the notes beside a job are kept. */
export function notesKey(id: string): string {
  return `fielded.notes.${id}`;
}

/** Removes a desk and the notes beside it. */
export function removeDesk(store: Storage, id: string): void {
  try {
    store.removeItem(PREFIX + id);
    store.removeItem(notesKey(id));
  } catch {
    // A store that lets nothing be removed keeps it.
  }
}

/** What lies on the desk of this id. */
export function readDesk(store: Storage, id: string): Found {
  const text = deskText(store, id);
  if (text === null) return { kind: 'none' };
  const kept = parseKept(text);
  return kept === null ? { kind: 'unreadable', text } : { kind: 'kept', kept };
}

/** All desks in this browser, the last used first, those that cannot be read at the end. */
export function listDesks(store: Storage): FoundDesk[] {
  const desks = listKeys(store).flatMap((key): FoundDesk[] => {
    const id = key.slice(PREFIX.length);
    const found = readDesk(store, id);
    return found.kind === 'none' ? [] : [{ id, found }];
  });
  const when = ({ found }: FoundDesk) => (found.kind === 'kept' ? found.kept.savedAt : -1);
  return desks.sort((one, other) => when(other) - when(one));
}

/**
 * Clears away the oldest of the desks that are just as their files are, past the number kept. A desk that holds anything
 * of its own, or that a tab has open, is never removed. `open` names the desks of open tabs; null where the browser cannot say.
 */
export function clearOldDesks(store: Storage, open: ReadonlySet<string> | null): void {
  if (open === null) return;
  for (const { id, found } of listDesks(store).slice(MOST_KEPT))
    if (found.kind === 'kept' && !open.has(id) && !holdsWork(found.kept)) removeDesk(store, id);
}

/** Whether a desk holds something that its file does not. */
export function holdsWork({ doc, drafts }: Kept): boolean {
  return isChanged(doc) || Object.keys(drafts).length > 0;
}

function listKeys(store: Storage): string[] {
  try {
    return Array.from({ length: store.length }, (_, i) => store.key(i) ?? '').filter((key) => key.startsWith(PREFIX));
  } catch {
    return [];
  }
}

/** What was kept, each part checked for its type; null where it cannot be read. */
function parseKept(text: string): Kept | null {
  try {
    const held: unknown = JSON.parse(text);
    if (!isRecord(held) || held.version !== 1 || !isDoc(held.doc)) return null;
    const { doc, savedAt } = held;
    // A draft is only a text half typed: one of another type is dropped, the job stays.
    const drafts = isRecord(held.drafts)
      ? Object.fromEntries(Object.entries(held.drafts).filter((entry): entry is [string, string] => isText(entry[1])))
      : {};
    return { version: 1, doc, drafts, savedAt: typeof savedAt === 'number' ? savedAt : 0 };
  } catch {
    return null;
  }
}

function isDoc(doc: unknown): doc is Doc {
  if (!isRecord(doc) || !isGroup(doc.data as Doc['data']) || !isText(doc.fileName)) return false;
  const { source, shop, asOpened } = doc;
  const shopIsSound = shop === null || (isRecord(shop) && isText(shop.name) && isText(shop.text) && 'data' in shop);
  return shopIsSound && (source === null || isText(source)) && (asOpened === undefined || isText(asOpened));
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isText(value: unknown): value is string {
  return typeof value === 'string';
}
