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

/** Makes the cuts of a job that was read from a file, and so is checked and whole, and puts its tongue into the groove. */
export function prepareReadJob(job: Job): PreparedJob {
  const edge = makeEdge(job.panel, job.cuts);
  return { job, edge, ...joinFrame(job, edge) };
}
