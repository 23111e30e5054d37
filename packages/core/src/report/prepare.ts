import type { GivenJob } from '../job/given-job.ts';
import { acceptJob } from '../job/given-job.ts';
import { type PreparedJob, prepareReadJob } from './prepared-job.ts';

/**
 * Makes a job's cuts and puts its tongue into the groove, for one answer or for several.
 *
 * @throws RangeError for a job that no file could hold (see `acceptJob`).
 */
export function prepareJob(given: GivenJob): PreparedJob {
  return prepareReadJob(acceptJob(given));
}
