import {
  closeSync,
  fchmodSync,
  fsyncSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  realpathSync,
  renameSync,
  rmSync,
  type Stats,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import type { Refusal } from '@fielded/core';
import { explainFailure } from './read-text.ts';

/**
 * Writes a file whole or not at all: beside its place first, on the disk for certain, then moved there; missing folders are
 * made. A link is followed to the file that it names, and a file that is replaced leaves its permissions to the new one.
 *
 * Gives what stood in the way, or null: a folder, a device or a pipe, a link to nothing, a file that may not be written.
 */
export function writeWhole(path: string, content: string | Uint8Array): Refusal | null {
  let beside: string | null = null;
  try {
    const found = findTarget(resolve(path));
    if ('refused' in found) return found;
    const { target, before } = found;
    mkdirSync(dirname(target), { recursive: true });
    sweepLeftovers(target);
    const name = join(dirname(target), `.${basename(target)}.${process.pid}.part`);
    const file = openSync(name, 'wx');
    beside = name;
    try {
      if (before !== null) fchmodSync(file, before.mode & 0o7777);
      writeFileSync(file, content);
      // A power cut after the move must find the new file whole.
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(beside, target);
    return null;
  } catch (error) {
    if (beside !== null) rmSync(beside, { force: true });
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'EEXIST' || code === 'ENOTDIR')
      return { refused: 'a part of the path is a file, not a folder', instead: 'Choose another place' };
    if (code === 'ENAMETOOLONG') return { refused: 'the name is too long', instead: 'Choose a shorter one' };
    return explainFailure(error);
  }
}

/** The file that a path stands for, links followed, and what is there now; or why it may not be replaced. */
function findTarget(path: string): { target: string; before: Stats | null } | Refusal {
  const link = lstatSync(path, { throwIfNoEntry: false });
  if (link === undefined) return { target: path, before: null };
  const before = statSync(path, { throwIfNoEntry: false });
  if (before === undefined)
    return { refused: 'this is a link to a file that is not there', instead: 'Remove the link, or name the file' };
  if (before.isDirectory()) return { refused: 'this is a folder, not a file', instead: 'Name the file to write in it' };
  if (!before.isFile())
    return { refused: 'this is a device or a pipe, not a plain file', instead: 'Name a file to write' };
  // Check the file's own permission bits: a superuser may write to any file.
  if ((before.mode & 0o222) === 0)
    return { refused: 'this file is marked as read-only', instead: 'Choose another name, or let it be written' };
  if (before.nlink > 1)
    return {
      refused: `this file has ${before.nlink} names (hard links), and replacing it would part them`,
      instead: 'Write to another name',
    };
  return { target: realpathSync(path), before };
}

/** Removes temporary files that killed runs left beside this file. */
function sweepLeftovers(target: string): void {
  const start = `.${basename(target)}.`;
  for (const name of readdirSync(dirname(target))) {
    if (!name.startsWith(start) || !name.endsWith('.part')) continue;
    const writer = Number(name.slice(start.length, -'.part'.length));
    if (Number.isInteger(writer) && writer > 0 && !isRunning(writer))
      rmSync(join(dirname(target), name), { force: true });
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // EPERM: the process exists and belongs to someone else.
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
