import type { Job } from '../job/job.ts';
import type { Voice } from '../problem/language.ts';
import type { FileValue } from '../problem/problem.ts';
import { say } from '../problem/say.ts';
import { type Compared, compareJobs } from './compare-jobs.ts';
import type { MetBoth } from './meet-both.ts';
import { describeMove } from './moves.ts';
import { Pair, RANGE } from './pair.ts';
import { needSetting, type Setting } from './settings.ts';
import { needTarget } from './targets.ts';

/** A figure wanted, its value in mm, and the two sizes that may be changed for it. */
export interface WantedByTwo {
  readonly for: string;
  readonly value: number;
  readonly by: readonly [string, string];
}

/** One of two sizes at its new setting, mm. */
export interface SettingOfTwo {
  readonly by: string;
  readonly setting: number;
  readonly change: number;
  /** The same in round figures, which is what is written. */
  readonly round: number;
  /** What to do at the machine; null where it stays. */
  readonly move: string | null;
}

/** Two settings that together give what is wanted with the least total movement, or why there are none. Lengths mm. */
export interface SolvedByTwo extends WantedByTwo, Compared {
  /** null where no two settings give it. */
  readonly settings: readonly [SettingOfTwo, SettingOfTwo] | null;
  /** Movement of both together. */
  readonly total: number | null;
  /** What the figure lacks of the value wanted, at the exact settings and at the round ones. */
  readonly residual: number | null;
  readonly roundResidual: number | null;
  readonly writes: readonly FileValue[];
  readonly reason: string | null;
  /** Where there are none: the two at which the figure comes nearest to the value wanted, the fit kept; null where there are none of those. */
  readonly nearest: MetBoth['nearest'];
}

/**
 * Finds two settings of a job that together give a wanted figure, with the least movement of both, Σ|Δ| (formula V1).
 *
 * A flush face is asked together with the job's target clearance, since moving one cut alone to bring the face flush would
 * spoil the fit: two figures, two settings. Any other figure leaves a choice, and of all pairs the one that moves least is
 * taken; that may be one setting alone. Sizes are looked for within 25 mm of where they are.
 *
 * @throws RangeError as `solve` does, and where both sizes are one.
 */
export function solveByTwo(job: Job, wanted: WantedByTwo, voice: Voice = job): SolvedByTwo {
  if (!Number.isFinite(wanted.value))
    throw new RangeError(`the ${wanted.for} wanted must be a number, got ${wanted.value}`);
  const target = needTarget(wanted.for);
  const [a, b] = wanted.by.map((name) => needSetting(job, name)) as [Setting, Setting];
  if (a.name === b.name) throw new RangeError(`${wanted.by[0]} and ${wanted.by[1]} are one size: name two`);
  const pair = new Pair(job, a, b);
  const clearance = needTarget('clearance');
  // A face is asked together with the clearance aimed at, which the second setting keeps.
  const kept = target.name === 'face' ? { target: clearance, value: job.fit.target } : { target, value: wanted.value };
  const { found, nearest }: MetBoth =
    target.name === 'face'
      ? pair.meetBoth(target, wanted.value, kept.target, kept.value)
      : { found: pair.moveLeast(target, wanted.value), nearest: null };
  if (found === null) {
    const names = { first: a.name, second: b.name, range: RANGE, figure: target.words };
    const reason =
      nearest === null
        ? say('why.neither', names, voice)
        : say('why.nearest-of-two', { ...names, wanted: wanted.value, nearest: nearest.value }, voice);
    return { ...wanted, ...NOTHING, reason, nearest };
  }
  const [x, y] = found;
  const round = pair.round(x, y, target, wanted.value, kept);
  const after = pair.at(round[0], round[1]);
  const settings = [describe(job, a, x, round[0]), describe(job, b, y, round[1])] as const;
  return {
    ...wanted,
    settings,
    total: Math.abs(x - a.now) + Math.abs(y - b.now),
    residual: (target.read(pair.at(x, y)) ?? Number.NaN) - wanted.value,
    roundResidual: (target.read(after) ?? Number.NaN) - wanted.value,
    ...compareJobs(job, after, target),
    writes: [...(settings[0].move ? a.writes(round[0]) : []), ...(settings[1].move ? b.writes(round[1]) : [])],
    reason: null,
    nearest: null,
  };
}

const NOTHING = {
  settings: null,
  total: null,
  residual: null,
  roundResidual: null,
  changes: [],
  problems: { gone: [], come: [] },
  writes: [],
} as const;

function describe(job: Job, setting: Setting, exact: number, round: number): SettingOfTwo {
  const change = exact - setting.now;
  return { by: setting.name, setting: exact, change, round, move: describeMove(job, setting, round - setting.now) };
}
