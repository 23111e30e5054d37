import { isGroup } from '../job/data.ts';
import { notesKey } from './storage.ts';

/** Notes beside a job that are no part of its file, such as the steps that are done, by the name of the note. */
type Notes = { readonly [name: string]: unknown };

/** Notes of this visit that the browser could not store, by the id of the job. */
const unstored = new Map<string, Notes>();

/** A note beside the job of this id; undefined for none. */
export function readNote(id: string, name: string): unknown {
  return readNotes(id)[name];
}

/** Writes a note beside a job; it goes when the job is deleted. Where nothing can be stored it holds until the page is closed. */
export function writeNote(id: string, name: string, value: unknown): void {
  const notes = { ...readNotes(id), [name]: value };
  try {
    localStorage.setItem(notesKey(id), JSON.stringify(notes));
  } catch {
    unstored.set(id, notes);
  }
}

function readNotes(id: string): Notes {
  const held = unstored.get(id);
  if (held !== undefined) return held;
  try {
    const notes: unknown = JSON.parse(localStorage.getItem(notesKey(id)) ?? '{}');
    return isGroup(notes as never) ? (notes as Notes) : {};
  } catch {
    return {};
  }
}
