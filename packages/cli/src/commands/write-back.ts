import { type FileValue, type FileWord, type ReadOptions, writeValues } from '@fielded/core';
import { markOf } from '../files/read-text.ts';
import { writeWhole } from '../files/write-whole.ts';
import { type Io, safe } from '../io.ts';
import { listFaults, refusalLine } from '../report/list-faults.ts';
import { say, voiceOf } from '../words/say.ts';
import { readWithFiles } from './read-jobs.ts';

/** Writes values into a job file, unless it could then no longer be read, which is reported on standard error. */
export async function writeBack(
  path: string,
  text: string,
  writes: readonly (FileValue | FileWord)[],
  units: 'mm' | 'in',
  shop: ReadOptions['shop'],
  io: Io,
): Promise<boolean> {
  const written = writeValues(text, writes, units, io.language);
  if ('refused' in written) {
    await io.err(`${safe(path)}  ${safe(written.refused)}\n`);
    return false;
  }
  if (written.text === text) return true;
  const { faults } = await readWithFiles(path, written.text, shop);
  if (faults.length > 0) {
    await io.err(`${safe(path)}  ${say('print.not-written-back', {}, voiceOf(io))}\n`);
    await io.err(listFaults(path, faults, shop !== undefined, io.language));
    return false;
  }
  // Everything but the values stays as it was, the mark that reading drops too.
  const refusal = writeWhole(path, markOf(path) + written.text);
  if (refusal === null) return true;
  await io.err(refusalLine(path, refusal));
  return false;
}
