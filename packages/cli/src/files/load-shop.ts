import { existsSync, realpathSync } from 'node:fs';
import { dirname, isAbsolute, relative, resolve, sep, win32 } from 'node:path';
import type { ReadOptions, Refusal } from '@fielded/core';
import { readTextFile } from './read-text.ts';

/**
 * Opens shop files for the job at `jobPath`: only from the job's own folder or below, links followed to where they
 * lead, so that a job from elsewhere cannot have other files read. The user can give any file with --shop.
 */
export function shopLoader(jobPath: string): NonNullable<ReadOptions['loadShop']> {
  return (path) => besideJob(jobPath, path, 'Move it beside the job, or give it on the command line with --shop');
}

/** The text of a file in the folder of the job or below, by its path from there; `instead` is said of one that is not. */
export function besideJob(jobPath: string, path: string, instead: string): string | Refusal {
  const outside = { refused: "the file lies outside the job's folder", instead };
  // Refused even where it leads into the folder: elsewhere, or on another machine, it would not.
  if (isAbsolute(path) || win32.isAbsolute(path))
    return {
      refused: 'it is named from the root of a disk',
      instead: `Name it as seen from the job's folder, such as ${win32.basename(path)}`,
    };
  const folder = dirname(resolve(jobPath));
  const target = resolve(folder, path);
  if (!isWithin(folder, target)) return outside;
  // Elsewhere than on Windows a backslash is a letter of the name.
  if (path.includes('\\') && !existsSync(target))
    return {
      refused: 'there is no such file, and its folders are parted by \\',
      instead: `Write them with /, such as ${path.replaceAll('\\', '/')}`,
    };
  try {
    if (!isWithin(realpathSync(folder), realpathSync(target))) return outside;
  } catch {
    // Missing, or a link that cannot be followed: readTextFile says which.
  }
  return readTextFile(target);
}

function isWithin(folder: string, target: string): boolean {
  const way = relative(folder, target);
  return way !== '' && way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}
