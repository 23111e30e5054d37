import { answerJoint, type Job, prepareReadJob, type Report, type Voice } from '@fielded/core';

/** Reports the joint of a job alone, by parts of the engine: what answers the rest is fetched later. */
export function reportJoint(job: Job & Pick<Voice, 'mute'>): Report {
  return answerJoint(prepareReadJob(job));
}
