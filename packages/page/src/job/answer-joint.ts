import { answerJoint, type Job, prepareReadJob, type Report } from '@fielded/core';

/** Reports the joint of a job alone, by parts of the engine: what answers the rest is fetched later. */
export function reportJoint(job: Job): Report {
  return answerJoint(prepareReadJob(job));
}
