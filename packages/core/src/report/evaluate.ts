import type { GivenJob } from '../job/given-job.ts';
import type { Problem } from '../problem/problem.ts';
import type { Planned } from '../setup/make-plan.ts';
import type { SimulationOptions } from '../spread/simulation.ts';
import { adviseInSteps } from './advice.ts';
import { answerDoors } from './doors.ts';
import { answerJoint, describeJoint, findJointProblems } from './joint.ts';
import { answerKnivesInSteps, type Knives, type MadeForCuts } from './knives.ts';
import { answerPlan, gatherNotChecked } from './plan.ts';
import { prepareJob } from './prepare.ts';
import type { PreparedJob } from './prepared-job.ts';
import { sortProblems } from './problems.ts';
import type { Report } from './report.ts';
import { answerSeasons, unknownWoods } from './seasons.ts';
import { findShapedHeadSeasons } from './shaped-head-problems.ts';
import { answerSpread } from './spread.ts';
import { stateBoth } from './statements.ts';
import { runToEnd } from './steps.ts';

export interface EvaluateOptions {
  /** How a job's spread is simulated; by default 100,000 joints, normally spread, seed 1. */
  readonly simulation?: SimulationOptions;
}

/**
 * The whole answer to a job: the section its cuts leave, the tongue, the fit, and what is wrong.
 *
 * Pure and synchronous. What cannot be made is said in `problems`, and figures that do not exist are null. Whoever needs only
 * a part of it prepares the job and asks for that part (see `prepareJob`).
 *
 * @throws RangeError for a job made by hand that no file could hold; never for one that `readJob` gave.
 */
export function evaluate(given: GivenJob, options: EvaluateOptions = {}): Report {
  return evaluateWithPlan(given, options).report;
}

/** A job's report, and the plan that was worked out for it; undefined where there is nothing to plan. */
export interface Evaluated {
  readonly report: Report;
  readonly planned: Planned | undefined;
}

/**
 * The whole answer to a job with its plan, worked out once: for whoever wants both.
 *
 * @throws RangeError as `evaluate` does.
 */
export function evaluateWithPlan(given: GivenJob, options: EvaluateOptions = {}): Evaluated {
  return runToEnd(evaluateInSteps(given, options));
}

/**
 * The same in steps of a few milliseconds each, for a page that answers a touch between them: `next()` makes one step, and the
 * last gives the answer. A knife is a step, and each way that is tried to put a problem right.
 *
 * @throws RangeError as `evaluate` does, at the first step.
 */
export function* evaluateInSteps(given: GivenJob, options: EvaluateOptions = {}): Generator<void, Evaluated> {
  const prepared = prepareJob(given);
  const made: MadeForCuts = new Map();
  const { knives, season, doors, planned, spread, all } = yield* answerAllInSteps(prepared, options, made);
  yield;
  // The statements count all problems; advice is applied and evaluated for each.
  const statements = stateBoth(prepared.job, prepared.fit.verdict, all, gatherNotChecked(planned));
  const problems = yield* adviseInSteps(prepared, season.report, sortProblems(all), made);
  const joint = { ...describeJoint(prepared), statements };
  const more = {
    ...(knives && { knives: knives.reports }),
    ...(spread.report && { spread: spread.report }),
    ...(season.report && { season: season.report }),
    ...(doors && { doors: doors.doors, blanks: doors.blanks, leftOver: doors.leftOver, timber: doors.timber }),
  };
  return { report: { ...joint, ...more, problems }, planned };
}

/** Each answer to a job, asked once, and all that they find wrong, without advice. */
export interface Answers {
  readonly knives: Knives | undefined;
  readonly season: ReturnType<typeof answerSeasons>;
  readonly doors: ReturnType<typeof answerDoors>;
  readonly planned: Planned | undefined;
  readonly spread: ReturnType<typeof answerSpread>;
  readonly all: Problem[];
}

/** All answers in steps as `evaluateInSteps`; the plan needs the doors, the spread needs the plan's stack. */
export function* answerAllInSteps(
  prepared: PreparedJob,
  options: EvaluateOptions,
  made: MadeForCuts,
): Generator<void, Answers> {
  const { job } = prepared;
  const knives = yield* answerKnivesInSteps(prepared, undefined, made);
  const season = answerSeasons(prepared);
  const doors = answerDoors(prepared);
  const planned = answerPlan(prepared, doors);
  const spread = answerSpread(prepared, options.simulation, planned?.plan.stack);
  const all = [
    ...findJointProblems(prepared),
    ...(knives?.problems ?? []),
    ...spread.problems,
    ...unknownWoods(job),
    ...season.problems,
    ...(doors?.problems ?? []),
    ...findShapedHeadSeasons(job, doors?.doors ?? [], season.report),
    ...(planned?.problems ?? []).filter(({ severity }) => severity === 'error'),
  ];
  return { knives, season, doors, planned, spread, all };
}

/**
 * The joint alone, at the speed of a drag: the report without knives, spread, seasons and doors, and the joint's own
 * problems only, without advice.
 *
 * @throws RangeError as `evaluate` does.
 */
export function evaluateJoint(given: GivenJob): Report {
  return answerJoint(prepareJob(given));
}
