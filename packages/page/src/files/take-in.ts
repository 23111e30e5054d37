import { readJobData } from '@fielded/core';
import type { Desk } from '../desk/desk.ts';
import type { Doc } from '../desk/doc.ts';
import { openFiles, readFiles } from './open-text.ts';

/** Puts an opened job on the desk if it can be read whole; else says why, and the job there stays. */
export function takeIn(desk: Desk, doc: Doc, said: string): boolean {
  const { job, faults } = readJobData(doc.data, doc.shop?.data);
  if (job === null) {
    desk.notice.value = {
      kind: 'fault',
      text: 'That is not a job that can be read; yours is as it was.',
      lines: faults.slice(0, 12).map(({ message }) => message),
    };
    return false;
  }
  desk.replace(doc);
  desk.units.value = job.units;
  desk.trace.value = null;
  desk.notice.value = { kind: 'note', text: said };
  return true;
}

/** Opens chosen or dropped files. */
export async function takeInFiles(desk: Desk, files: readonly File[]): Promise<void> {
  if (files.length === 0) return;
  desk.notice.value = { kind: 'note', text: 'Opening…' };
  try {
    const given = await readFiles(files);
    const opened = 'message' in given ? { message: given.message, lines: [] } : await openFiles(given);
    if ('doc' in opened) takeIn(desk, opened.doc, `${opened.doc.fileName} is open. Undo brings back the job before.`);
    else desk.notice.value = { kind: 'fault', text: opened.message, lines: opened.lines };
  } catch {
    desk.notice.value = { kind: 'fault', text: 'The file could not be read; your job is as it was.' };
  }
}
