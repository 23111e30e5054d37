import { mkdirSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { explainFailure, type Refusal } from './read-text.ts';

/**
 * Writes a file whole or not at all: beside its place first, then moved there; missing folders are made. Gives what
 * stood in the way, or null.
 */
export function writeWhole(path: string, content: string | Uint8Array): Refusal | null {
  const target = resolve(path);
  const beside = join(dirname(target), `.${basename(target)}.${process.pid}.part`);
  let started = false;
  try {
    if (statSync(target, { throwIfNoEntry: false })?.isDirectory())
      return { refused: 'this is a folder, not a file', instead: 'Name the file to write in it' };
    mkdirSync(dirname(target), { recursive: true });
    started = true;
    writeFileSync(beside, content, { flag: 'wx' });
    renameSync(beside, target);
    return null;
  } catch (error) {
    if (started) rmSync(beside, { force: true });
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'EEXIST' || code === 'ENOTDIR')
      return { refused: 'a part of the path is a file, not a folder', instead: 'Choose another place' };
    return explainFailure(error);
  }
}
