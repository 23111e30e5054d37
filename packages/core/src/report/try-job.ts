import type { Job } from '../job/job.ts';
import { makeEdge } from '../joint/edge.ts';
import type { Voice } from '../problem/language.ts';
import type { Problem } from '../problem/problem.ts';
import { answerDoors } from './doors.ts';
import { joinFrame } from './join.ts';
import { answerKnives } from './knives.ts';
import { answerPlan } from './plan.ts';
import type { PreparedJob } from './prepared-job.ts';
import { findProblems } from './problems.ts';
import { answerSeasons } from './seasons.ts';
import { findSizeProblems } from './size-problems.ts';

/** What is wrong with a job that is tried out, without advice and without its spread: first the joint, then what makes it. */
export interface Tried {
  /** Problems of the joint and of its seasons: at hand in no time, and enough to rule most changes out. */
  readonly joint: readonly Problem[];
  /** Problems of knives, doors and set-ups, computed when they are asked for. */
  readonly making: () => readonly Problem[];
}

/** Tries a job out; nothing of it is put into words. */
export function tryJob(changed: Job): Tried {
  const job: Job & Voice = { ...changed, mute: true };
  const edge = makeEdge(job.panel, job.cuts);
  const prepared = { job, edge, ...joinFrame(job, edge) };
  const { tongue, fit } = prepared;
  let made: readonly Problem[] | undefined;
  return {
    joint: [
      ...findProblems(job, edge, fit),
      ...findSizeProblems(job, edge, tongue),
      ...answerSeasons(prepared).problems,
    ],
    making: () => {
      made ??= findMakingProblems(prepared);
      return made;
    },
  };
}

function findMakingProblems(prepared: PreparedJob): Problem[] {
  const doors = answerDoors(prepared);
  return [
    ...(answerKnives(prepared)?.problems ?? []),
    ...(doors?.problems ?? []),
    ...(answerPlan(prepared, doors, 'own heads')?.problems ?? []).filter(({ severity }) => severity === 'error'),
  ];
}
