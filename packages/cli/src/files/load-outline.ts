import { dirname, isAbsolute, join } from 'node:path';
import type { ReadOptions } from '@fielded/core';
import { besideJob } from './load-shop.ts';

/** Gives the outline in the text of a drawing with that name, as path data in mm. */
type ReadDrawing = (name: string, text: string) => ReturnType<NonNullable<ReadOptions['loadOutline']>>;

/**
 * Opens the drawings that profiles of the job at `jobPath` name: beside the file that names them, and only from the job's own
 * folder or below.
 */
export function outlineLoader(jobPath: string, readDrawing: ReadDrawing): NonNullable<ReadOptions['loadOutline']> {
  return (path, from) => {
    // Joined to a folder, an absolute path would look like one below it.
    const seen = isAbsolute(path) ? path : join(dirname(from), path);
    const text = besideJob(jobPath, seen, 'Move it into the folder of the job');
    return typeof text === 'string' ? readDrawing(path, text) : text;
  };
}
