import type { Job } from '../job/job.ts';
import type { Verdict } from '../joint/fit-report.ts';
import { SEVERITIES } from '../problem/codes.ts';
import type { Voice } from '../problem/language.ts';
import type { Problem } from '../problem/problem.ts';
import { answerDoors } from './doors.ts';
import { judgeJob } from './join.ts';
import { findJointProblems } from './joint.ts';
import { answerKnives, type MadeForCuts } from './knives.ts';
import { answerPlan } from './plan.ts';
import { type PreparedJob, prepareReadJob } from './prepared-job.ts';
import { answerSeasons } from './seasons.ts';

/** What of a problem tells whether it was there before. */
type Kind = Pick<Problem, 'severity' | 'code' | 'at'>;

/**
 * What is wrong with a job that is tried out, without advice and without its spread, in three parts, each worked out when it is asked
 * for: what rules most changes out takes the least time.
 */
export interface Tried {
  /** What is said of its fit alone. */
  readonly fit: () => readonly Kind[];
  /** Problems of the joint and of its seasons. */
  readonly joint: () => readonly Kind[];
  /** Problems of knives, doors and set-ups. */
  readonly making: () => readonly Kind[];
}

/** Tries a job out; nothing of it is put into words. `made` are knives for cuts of the same panel and shop; those made here are added. */
export function tryJob(changed: Job, made: MadeForCuts): Tried {
  const job: Job & Voice = { ...changed, mute: true };
  const prepare = once(() => prepareReadJob(job));
  return {
    fit: once(() => sayVerdict(judgeJob(job))),
    joint: once(() => findFitProblems(prepare())),
    making: once(() => findMakingProblems(prepare(), made)),
  };
}

/** A value worked out when it is first asked for. */
function once<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

/** The problem that a verdict is, under the name that `findJointProblems` gives it. */
function sayVerdict(verdict: Verdict | null): Kind[] {
  if (verdict === null || verdict === 'sliding') return [];
  return [{ severity: SEVERITIES[verdict], code: verdict, at: 'cuts' }];
}

function findFitProblems(prepared: PreparedJob): Problem[] {
  return [...findJointProblems(prepared), ...answerSeasons(prepared).problems];
}

function findMakingProblems(prepared: PreparedJob, made: MadeForCuts): Problem[] {
  const doors = answerDoors(prepared);
  return [
    ...(answerKnives(prepared, undefined, made)?.problems ?? []),
    ...(doors?.problems ?? []),
    ...(answerPlan(prepared, doors, 'own heads')?.problems ?? []).filter(({ severity }) => severity === 'error'),
  ];
}
