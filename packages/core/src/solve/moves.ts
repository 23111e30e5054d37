import type { Job } from '../job/job.ts';
import { formatLength } from '../measure/format.ts';
import type { Setting } from './settings.ts';

/** A move less than this, mm, nobody can make. */
export const LEAST_MOVE = 1e-6;

/** What to do at the machine for a change of a size, in words; null where nothing needs moving. */
export function describeMove(job: Job, setting: Setting, change: number): string | null {
  const far = Math.abs(change);
  if (far < LEAST_MOVE) return null;
  const say = (mm: number) => formatLength(mm, job.units);
  const words = change > 0 ? setting.grow : setting.shrink;
  return words.replace('{by}', say(far)).replace('{twice}', say(2 * far));
}
