import { readFileSync, statSync } from 'node:fs';
import type { Refusal } from '@fielded/core';
import { noteRead } from './files-read.ts';

/** The largest file that is read, bytes. */
const MOST_BYTES = 1_000_000;

/**
 * The text of a file, or why there is none: missing, a folder, not a plain file, not allowed, larger than a megabyte
 * (found before it is read), UTF-16, or not text at all. A byte order mark of UTF-8 is dropped.
 */
export function readTextFile(path: string): string | Refusal {
  let bytes: Uint8Array;
  try {
    const found = statSync(path);
    if (found.isDirectory()) return { refused: 'this is a folder, not a file', instead: 'Name the file in it' };
    if (!found.isFile()) return { refused: 'this is not a plain file', instead: 'Save the text to a file first' };
    if (found.size > MOST_BYTES)
      return {
        refused: `the file is ${size(found.size)}, and files up to 1 MB are read`,
        instead: 'Check that this is the right file',
      };
    bytes = readFileSync(path);
    noteRead(found);
  } catch (error) {
    return explainFailure(error);
  }
  return decode(bytes);
}

function decode(bytes: Uint8Array): string | Refusal {
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff))
    return { refused: 'the file is in UTF-16', instead: 'Save it as UTF-8' };
  const notText = { refused: 'the file is not text', instead: 'Name a job file: YAML or JSON in UTF-8' };
  if (bytes.includes(0)) return notText;
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return { refused: 'the file is not in UTF-8', instead: 'Save it as UTF-8' };
  }
}

/** The byte order mark that a file of text starts with, as some editors write it; '' where there is none. */
export function markOf(path: string): string {
  const [first, second, third] = readFileSync(path);
  return first === 0xef && second === 0xbb && third === 0xbf ? '\uFEFF' : '';
}

/** What the system says, in plain words. */
export function explainFailure(error: unknown): Refusal {
  const code = (error as NodeJS.ErrnoException).code ?? '';
  switch (code) {
    case 'ENOENT':
      return { refused: 'there is no such file', instead: 'Check the name and the folder' };
    case 'ENOTDIR':
      return { refused: 'a part of the path is a file, not a folder', instead: 'Check the path' };
    case 'EACCES':
    case 'EPERM':
      return { refused: 'this may not be opened', instead: 'Check its permissions' };
    case 'ELOOP':
      return { refused: 'the links on this path lead in a circle', instead: 'Check the path' };
    case 'ENAMETOOLONG':
      return { refused: 'the name is too long', instead: 'Check the path' };
    case 'EISDIR':
      return { refused: 'this is a folder, not a file', instead: 'Name a file' };
    case 'ENOSPC':
      return { refused: 'the disk is full', instead: 'Make room on it' };
    case 'EROFS':
      return { refused: 'nothing can be written there', instead: 'Choose another folder' };
    default:
      return { refused: `the system cannot open it (${code || 'unknown'})`, instead: 'Check the path' };
  }
}

function size(bytes: number): string {
  return bytes < 10_000_000 ? `${(bytes / 1e6).toFixed(1)} MB` : `${Math.round(bytes / 1e6)} MB`;
}
