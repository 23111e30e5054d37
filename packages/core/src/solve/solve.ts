import type { Job } from '../job/job.ts';
import { formatLength } from '../measure/format.ts';
import type { Voice } from '../problem/language.ts';
import type { FileValue } from '../problem/problem.ts';
import { say } from '../problem/say.ts';
import { type Compared, compareJobs } from './compare-jobs.ts';
import { describeMove, LEAST_MOVE } from './moves.ts';
import { type Rounded, roundSetting } from './round.ts';
import { type FigureOfSetting, searchSetting } from './search.ts';
import { needSetting, SCRATCH, type Setting } from './settings.ts';
import { needTarget, readWhereReadable, type Target } from './targets.ts';

/** What is wanted: the figure, its value in mm, and the size that may be changed for it. */
export interface Wanted {
  readonly for: string;
  readonly value: number;
  readonly by: string;
}

/** The setting that gives what is wanted, or why there is none. Lengths mm. */
export interface Solved extends Wanted, Compared {
  /** What to set; null where no setting gives it. */
  readonly setting: number | null;
  /** How far that is from the present setting; positive is more. */
  readonly change: number | null;
  /** What the figure then lacks of the value wanted. */
  readonly residual: number | null;
  /** The same in the roundest figures that still serve, and what the figure is then: this is what is written. */
  readonly round: Rounded | null;
  /** The same to the nearest 1/64 in, and what the figure is then. */
  readonly nearest64: { readonly setting: number; readonly inches: string; readonly value: number | null } | null;
  /** What to do at the machine, in words; null where nothing needs moving or nothing helps. */
  readonly move: string | null;
  /** Values of the job file to write, mm; none where there is no answer. */
  readonly writes: readonly FileValue[];
  /** Why there is no answer; null where there is one. */
  readonly reason: string | null;
  /** The setting at which the figure comes nearest, and what it is there. */
  readonly nearest: { readonly setting: number; readonly value: number } | null;
}

/**
 * Finds the setting of one size of a job that gives a wanted figure: the one nearest to the present setting. Where there is none, the
 * voice says why.
 *
 * Works the joint out anew at each trial, so every shape is right; bisects to the last bit, so where the figure changes at
 * all the residual is rounding. Where no setting gives it the answer says why and how near one comes.
 *
 * @throws RangeError for a figure or size that a job does not have (the nearest named) or a value that is not a number.
 * @example solve(job, { for: 'clearance', value: 0.2, by: 'back relief.depth' }).setting // 4.8
 */
export function solve(job: Job, wanted: Wanted, voice: Voice = job): Solved {
  if (!Number.isFinite(wanted.value))
    throw new RangeError(`the ${wanted.for} wanted must be a number, got ${wanted.value}`);
  const target = needTarget(wanted.for);
  const setting = needSetting(job, wanted.by);
  const curve: FigureOfSetting = (mm) => readWhereReadable(target, setting.set(mm));
  const { found, nearest, reachable } = searchSetting(curve, wanted.value, setting.now, setting.least, setting.most);
  if (found === null) {
    const reason = whyNot(voice, wanted, target, setting, nearest, reachable);
    return { ...wanted, ...NOTHING, reason, nearest };
  }
  // A setting that can be set: round figures, unless it is right already.
  const change = found.setting - setting.now;
  const round = change === 0 ? found : roundSetting(found.setting, job.units, curve, wanted.value);
  return {
    ...wanted,
    setting: found.setting,
    change,
    residual: found.value - wanted.value,
    nearest64: toNearest64(found.setting, curve, setting),
    move: describeMove(job, setting, change),
    round,
    ...compareJobs(job, setting.set(found.setting), target),
    writes: change === 0 ? [] : setting.writes(round.setting),
    reason: null,
    nearest: found,
  };
}

const NOTHING = {
  setting: null,
  change: null,
  residual: null,
  round: null,
  nearest64: null,
  move: null,
  changes: [],
  problems: { gone: [], come: [] },
  writes: [],
} as const;

function toNearest64(mm: number, curve: FigureOfSetting, { least, most }: Setting): Solved['nearest64'] {
  const rounded = (Math.round((mm / 25.4) * 64) / 64) * 25.4;
  const inside = rounded >= least && rounded <= most;
  return { setting: rounded, inches: formatLength(rounded, 'in'), value: inside ? curve(rounded) : null };
}

function whyNot(
  voice: Voice,
  { value, by }: Wanted,
  target: Target,
  setting: Setting,
  nearest: Solved['nearest'],
  reachable: readonly [number, number] | null,
): string {
  const figure = target.words;
  if (nearest === null || reachable === null)
    return target.name.startsWith('season.')
      ? say('why.no-seasons', { figure }, voice)
      : say('why.no-figure', { figure }, voice);
  if (reachable[1] - reachable[0] < LEAST_MOVE)
    return say('why.independent', { figure, by, value: nearest.value }, voice);
  const { most } = setting;
  // A setting that may not be 0 comes as near to it as the search goes.
  const least = setting.least <= SCRATCH ? 0 : setting.least;
  const near = { nearest: nearest.value, setting: nearest.setting };
  return say('why.out-of-reach', { by, least, most, figure, wanted: value, ...near }, voice);
}
