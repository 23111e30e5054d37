import type { Job } from '../job/job.ts';
import { makeEdge } from '../joint/edge.ts';
import { formatLength } from '../measure/format.ts';
import type { FileValue, Problem } from '../problem/problem.ts';
import { findNearest } from '../reading/nearest.ts';
import { evaluate } from '../report/evaluate.ts';
import { joinFrame } from '../report/join.ts';
import { type Curve, searchSetting } from './search.ts';
import { findSetting, type Setting, settingNames } from './settings.ts';
import { TARGETS, type Target } from './targets.ts';

/** What is wanted: the figure, its value in mm, and the size that may be changed for it. */
export interface Wanted {
  readonly for: string;
  readonly value: number;
  readonly by: string;
}

/** A figure that changes with the setting. */
export interface Change {
  readonly name: string;
  readonly before: number | string | null;
  readonly after: number | string | null;
}

/** The setting that gives what is wanted, or why there is none. Lengths mm. */
export interface Solved extends Wanted {
  /** What to set; null where no setting gives it. */
  readonly setting: number | null;
  /** How far that is from the present setting; positive is more. */
  readonly change: number | null;
  /** What the figure then lacks of the value wanted. */
  readonly residual: number | null;
  /** The same to the nearest 1/64 in, and what the figure is then. */
  readonly nearest64: { readonly setting: number; readonly inches: string; readonly value: number | null } | null;
  /** What to do at the machine, in words; null where nothing needs moving or nothing helps. */
  readonly move: string | null;
  /** What else changes. */
  readonly changes: readonly Change[];
  /** Problems of the job that go with it, and new ones. */
  readonly problems: { readonly gone: readonly Problem[]; readonly come: readonly Problem[] };
  /** Values of the job file to write, mm; none where there is no answer. */
  readonly writes: readonly FileValue[];
  /** Why there is no answer; null where there is one. */
  readonly reason: string | null;
  /** The setting at which the figure comes nearest, and what it is there. */
  readonly nearest: { readonly setting: number; readonly value: number } | null;
}

/**
 * Finds the setting of one size of a job that gives a wanted figure: the one nearest to the present setting.
 *
 * Works the joint out anew at each trial, so every shape is right; bisects to the last bit, so where the figure changes at
 * all the residual is rounding. Where no setting gives it the answer says why and how near one comes.
 *
 * @throws RangeError for a figure or size that a job does not have (the nearest named) or a value that is not a number.
 * @example solve(job, { for: 'clearance', value: 0.2, by: 'back relief.depth' }).setting // 4.8
 */
export function solve(job: Job, wanted: Wanted): Solved {
  if (!Number.isFinite(wanted.value))
    throw new RangeError(`the ${wanted.for} wanted must be a number, got ${wanted.value}`);
  const target = TARGETS.find(({ name }) => name === wanted.for);
  if (target === undefined)
    throw new RangeError(
      unknownName(
        'a figure',
        wanted.for,
        TARGETS.map(({ name }) => name),
      ),
    );
  const setting = findSetting(job, wanted.by);
  if (setting === null) throw new RangeError(unknownName('a size to set', wanted.by, settingNames(job)));
  const curve: Curve = (mm) => target.read(setting.set(mm));
  const { found, nearest, reachable } = searchSetting(curve, wanted.value, setting.now, setting.least, setting.most);
  if (found === null) {
    const reason = whyNot(job, wanted, target, setting, nearest, reachable);
    return { ...wanted, ...NOTHING, reason, nearest };
  }
  const change = found.setting - setting.now;
  return {
    ...wanted,
    setting: found.setting,
    change,
    residual: found.value - wanted.value,
    nearest64: toNearest64(found.setting, curve, setting),
    move: describeMove(job, setting, change),
    changes: listChanges(job, setting.set(found.setting), target),
    problems: compareProblems(job, setting.set(found.setting)),
    writes: change === 0 ? [] : setting.writes(found.setting),
    reason: null,
    nearest: found,
  };
}

const NOTHING = {
  setting: null,
  change: null,
  residual: null,
  nearest64: null,
  move: null,
  changes: [],
  problems: { gone: [], come: [] },
  writes: [],
} as const;

function unknownName(what: string, name: string, known: readonly string[]): string {
  const near = findNearest(name, known);
  const hint = near === undefined ? `it knows ${known.join(', ')}` : `did you mean ${near}?`;
  return `${name} is not ${what} of this job: ${hint}`;
}

function toNearest64(mm: number, curve: Curve, { least, most }: Setting): Solved['nearest64'] {
  const rounded = (Math.round((mm / 25.4) * 64) / 64) * 25.4;
  const inside = rounded >= least && rounded <= most;
  return { setting: rounded, inches: formatLength(rounded, 'in'), value: inside ? curve(rounded) : null };
}

function describeMove(job: Job, setting: Setting, change: number): string | null {
  const far = Math.abs(change);
  if (far < LEAST_MOVE) return null;
  return `${change > 0 ? setting.grow : setting.shrink} by ${formatLength(far, job.units)}`;
}

/** A move less than this, mm, nobody can make. */
const LEAST_MOVE = 1e-6;

function whyNot(
  job: Job,
  { value, by }: Wanted,
  target: Target,
  setting: Setting,
  nearest: Solved['nearest'],
  reachable: readonly [number, number] | null,
): string {
  const say = (mm: number) => formatLength(mm, job.units);
  if (nearest === null || reachable === null) {
    const needed = target.name.startsWith('season.')
      ? 'the job gives no seasons, or not the wood and width they need'
      : 'the cuts leave no tongue, or it does not enter, at any setting';
    return `There is no ${target.words} to set: ${needed}.`;
  }
  if (reachable[1] - reachable[0] < LEAST_MOVE) {
    return `The ${target.words} does not depend on ${by}: it is ${say(nearest.value)} at every setting.`;
  }
  const range = `${say(setting.least)} to ${say(setting.most)}`;
  return `No ${by} from ${range} brings the ${target.words} to ${say(value)}: the nearest is ${say(nearest.value)}, at ${say(nearest.setting)}.`;
}

/** The verdict and the figures of the joint that are not as they were, but for the one solved for. */
function listChanges(before: Job, after: Job, solvedFor: Target): Change[] {
  const verdictOf = (job: Job) => joinFrame(job, makeEdge(job.panel, job.cuts)).fit.verdict;
  // `frontFace` and `backFace` are short for their `.most`.
  const known = [solvedFor.name, `${solvedFor.name}.most`, 'frontFace', 'backFace'];
  const figures = TARGETS.filter(({ name }) => !known.includes(name)).map(
    ({ name, read }): Change => ({ name, before: read(before), after: read(after) }),
  );
  const verdict: Change = { name: 'verdict', before: verdictOf(before), after: verdictOf(after) };
  return [verdict, ...figures].filter(hasChanged);
}

/** Problems that go with the change and problems that come, told apart by code and place. */
function compareProblems(before: Job, after: Job): Solved['problems'] {
  // Simulating would take longer than everything else together, and adds no problems of its own.
  const was = evaluate(withoutSpread(before)).problems;
  const is = evaluate(withoutSpread(after)).problems;
  const missingFrom = (list: readonly Problem[]) => (problem: Problem) =>
    !list.some(({ code, at }) => code === problem.code && at === problem.at);
  return { gone: was.filter(missingFrom(is)), come: is.filter(missingFrom(was)) };
}

function withoutSpread({ spread: _, ...job }: Job): Job {
  return job;
}

function hasChanged({ before, after }: Change): boolean {
  if (typeof before === 'number' && typeof after === 'number') return Math.abs(before - after) > 1e-9;
  return before !== after;
}
