import type { GivenJob } from '../job/given-job.ts';
import { acceptJob } from '../job/given-job.ts';
import type { Job } from '../job/job.ts';
import { type Edge, makeEdge } from '../joint/edge.ts';
import type { FitReport, TongueReport } from '../joint/fit-report.ts';
import { joinFrame } from './join.ts';

/**
 * A job with everything that more than one of its answers needs: the cuts swept once, the section cut once, the tongue
 * measured once. Each answer (`answerJoint`, `answerKnives`, `answerSpread`, `answerSeasons`, `answerDoors`) takes it and
 * computes no more than it says.
 */
export interface PreparedJob {
  readonly job: Job;
  readonly edge: Edge;
  readonly tongue: TongueReport;
  readonly fit: FitReport;
}

/**
 * Makes a job's cuts and puts its tongue into the groove, for one answer or for several.
 *
 * @throws RangeError for a job that no file could hold (see `acceptJob`).
 */
export function prepareJob(given: GivenJob): PreparedJob {
  const job = acceptJob(given);
  const edge = makeEdge(job.panel, job.cuts);
  return { job, edge, ...joinFrame(job, edge) };
}
