import { readFileSync, statSync } from 'node:fs';
import type { Refusal } from '@fielded/core';
import { explainFailure } from './read-text.ts';

/** The bytes of a file, or why there are none: missing, a folder, not a plain file, not allowed, empty, or more than `most` (found before it is read). */
export function readBytes(path: string, most: number): Uint8Array | Refusal {
  try {
    const found = statSync(path);
    if (found.isDirectory()) return { refused: 'this is a folder, not a file', instead: 'Name the file in it' };
    if (!found.isFile()) return { refused: 'this is not a plain file', instead: 'Save the picture to a file first' };
    if (found.size === 0) return { refused: 'the file is empty', instead: 'Check that this is the right file' };
    if (found.size > most)
      return {
        refused: `the file is ${Math.round(found.size / 1e6)} MB, and files up to ${most / 1e6} MB are read`,
        instead: 'Check that this is the right file',
      };
    return readFileSync(path);
  } catch (error) {
    return explainFailure(error);
  }
}
