import { answerJoint, type Job, prepareReadJob, type Report } from '@fielded/core';

/** The joint of a job alone: by the engine's own parts, so that what answers everything else is not fetched with it. */
export function reportJoint(job: Job): Report {
  return answerJoint(prepareReadJob(job));
}
