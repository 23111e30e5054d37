import { type Dirent, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Refusal } from '@fielded/core';
import { explainFailure, readTextFile } from './read-text.ts';

/** A job file by the path to show for it, with its text or why it has none. */
export interface JobText {
  readonly path: string;
  readonly text: string | Refusal;
}

const JOB_NAME = /\.(ya?ml|json)$/i;

/**
 * The job files that a path stands for: the file itself, or every job in a folder and the folders in it, by name.
 *
 * In a folder, files are jobs when they are YAML or JSON and speak of a panel, a frame or cuts: shop files, languages and other data
 * are passed over. Hidden folders, node_modules and linked folders are not entered.
 */
export function findJobs(path: string): { readonly jobs: readonly JobText[]; readonly folder: boolean } {
  if (!isFolder(path)) return { jobs: [{ path, text: readTextFile(path) }], folder: false };
  const jobs: JobText[] = [];
  searchFolder(path, jobs);
  if (jobs.length === 0)
    jobs.push({
      path,
      text: { refused: 'there is no job file in this folder', instead: 'Name a folder with jobs in it' },
    });
  return { jobs, folder: true };
}

function isFolder(path: string): boolean {
  try {
    return statSync(path).isDirectory();
  } catch {
    return false;
  }
}

function searchFolder(folder: string, jobs: JobText[]): void {
  let entries: Dirent[];
  try {
    entries = readdirSync(folder, { withFileTypes: true }).sort((one, other) => (one.name < other.name ? -1 : 1));
  } catch (error) {
    jobs.push({ path: folder, text: explainFailure(error) });
    return;
  }
  for (const entry of entries) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) {
      if (!entry.name.startsWith('.') && entry.name !== 'node_modules') searchFolder(path, jobs);
    } else if (entry.isFile() && JOB_NAME.test(entry.name)) {
      const text = readTextFile(path);
      if (typeof text === 'string' && looksLikeJob(text)) jobs.push({ path, text });
    }
  }
}

/** Judged on the keys as written, so that a job with a slip in its YAML is reported and not passed over. */
function looksLikeJob(text: string): boolean {
  const has = (key: string) => new RegExp(`(^|[{,\\s])["']?${key}["']?\\s*:`, 'm').test(text);
  // A language's sentences quote keys of a job.
  if (has('decimal') && has('sentences')) return false;
  return has('fielded') && (has('panel') || has('frame') || has('cuts'));
}
