import type { Desk } from '../desk/desk.ts';
import type { Keeper } from '../desk/keeper.ts';
import { takeInFiles } from './take-in.ts';

/** The most files of a folder that are opened: a job's own folder holds few. */
const MOST_FILES = 60;
const KNOWN = /\.(?:ya?ml|json|svg|dxf|png|jpe?g)$/i;

/** Opens what was dropped on the page: files, or folders of them. */
export async function takeInDropped(
  desk: Desk,
  keeper: Keeper,
  entries: readonly (FileSystemEntry | null)[],
  files: readonly File[],
): Promise<void> {
  await takeInFiles(desk, keeper, await filesOf(entries, files));
}

/** The files that were dropped; of a folder, the jobs, shops, drawings and logos in it and in the folders below. */
async function filesOf(entries: readonly (FileSystemEntry | null)[], files: readonly File[]): Promise<File[]> {
  const folders = entries.filter((entry): entry is FileSystemDirectoryEntry => entry?.isDirectory === true);
  if (folders.length === 0) return [...files];
  const found: File[] = files.filter((_, i) => entries[i]?.isFile === true);
  const left: FileSystemDirectoryEntry[] = [...folders];
  for (let folder = left.shift(); folder !== undefined && found.length < MOST_FILES; folder = left.shift()) {
    for (const entry of await entriesOf(folder)) {
      if (entry.isDirectory) left.push(entry as FileSystemDirectoryEntry);
      else if (KNOWN.test(entry.name) && found.length < MOST_FILES)
        found.push(await fileOf(entry as FileSystemFileEntry));
    }
  }
  return found;
}

/** The entries of a folder: a browser gives about a hundred at a time, until it gives none. */
async function entriesOf(folder: FileSystemDirectoryEntry): Promise<FileSystemEntry[]> {
  const reader = folder.createReader();
  const all: FileSystemEntry[] = [];
  for (;;) {
    const some = await new Promise<FileSystemEntry[]>((settle, fail) => reader.readEntries(settle, fail));
    if (some.length === 0 || all.length > 500) return all;
    all.push(...some);
  }
}

function fileOf(entry: FileSystemFileEntry): Promise<File> {
  return new Promise((settle, fail) => entry.file(settle, fail));
}
