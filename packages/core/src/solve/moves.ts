import type { Job } from '../job/job.ts';
import { ENGLISH } from '../problem/english.ts';
import { IN_ENGLISH } from '../problem/language.ts';
import { sayIn } from '../problem/phrase.ts';
import type { Setting } from './settings.ts';

/** The smallest move, mm, that can be made at a machine. */
export const LEAST_MOVE = 1e-6;

/** What to do at the machine for a change of a size, in words; null where nothing needs moving. */
export function describeMove(job: Job, setting: Setting, change: number): string | null {
  const by = Math.abs(change);
  if (by < LEAST_MOVE) return null;
  const sentence = change > 0 ? setting.grow : setting.shrink;
  return sayIn({ sentence, figures: { by, twice: 2 * by } }, job, {
    language: job.language ?? IN_ENGLISH,
    english: ENGLISH,
  });
}
