import type { Job } from '../job/job.ts';
import { makeEdge } from '../joint/edge.ts';
import type { FitReport } from '../joint/fit-report.ts';
import type { Problem } from '../problem/problem.ts';
import { answerDoors } from './doors.ts';
import { joinFrame } from './join.ts';
import { answerKnives } from './knives.ts';
import { findProblems } from './problems.ts';
import { answerSeasons } from './seasons.ts';
import { findSizeProblems } from './size-problems.ts';

/** What a job comes to when it is tried out: its fit and every problem but those of its spread, without advice. */
export interface Tried {
  readonly fit: FitReport;
  readonly problems: readonly Problem[];
}

/** Tries a job out. */
export function tryJob(job: Job): Tried {
  const edge = makeEdge(job.panel, job.cuts);
  const prepared = { job, edge, ...joinFrame(job, edge) };
  const { tongue, fit } = prepared;
  const problems = [
    ...findProblems(job, edge, fit),
    ...findSizeProblems(job, edge, tongue),
    ...(answerKnives(prepared)?.problems ?? []),
    ...answerSeasons(prepared).problems,
    ...(answerDoors(prepared)?.problems ?? []),
  ];
  return { fit, problems };
}
