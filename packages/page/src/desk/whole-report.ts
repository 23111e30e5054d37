import { evaluate, type Job, type Report } from '@fielded/core';

/** Everything a job is asked beyond its joint: knives, spread, seasons, doors, advice. Fetched when a job first asks for it. */
export function answerWhole(job: Job): Report {
  return evaluate(job);
}
