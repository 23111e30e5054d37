import { canBeRead } from '../job/can-be-read.ts';
import type { Job } from '../job/job.ts';
import { makeEdge } from '../joint/edge.ts';
import { designInsertion } from '../joint/fit.ts';
import type { Said } from '../problem/problem.ts';
import { told } from '../problem/say.ts';
import { joinFrame, joinTongue } from '../report/join.ts';
import { answerSeasons } from '../report/seasons.ts';
import { UnknownName } from './unknown-name.ts';

/** A figure of a joint that a setting can be found for, mm. */
export interface Target {
  readonly name: string;
  /** Its name in a sentence. */
  readonly words: Said;
  readonly read: (job: Job) => number | null;
}

/** A job that a setting was tried on: sizes out of place are told apart elsewhere. */
const prepare = (job: Job) => {
  const edge = makeEdge(job.panel, job.cuts);
  return { job, edge, ...joinFrame(job, edge) };
};
const join = (job: Job) => joinFrame(job, makeEdge(job.panel, job.cuts));

/** Figures of the joint as made. `frontFace` and `backFace` alone mean the panel hard against that wall of the groove. */
const OF_THE_JOINT: readonly Target[] = [
  {
    name: 'clearance',
    words: told('target.clearance', {}),
    // Not the fit's own, which takes what is within 1e-9 of nothing as nothing: that would leave 0 a range of settings.
    read: (job) => {
      const { grooveNeeded } = joinTongue(job);
      return grooveNeeded === null ? null : job.frame.groove.width - 2 * (job.panel.film ?? 0) - grooveNeeded;
    },
  },
  {
    name: 'deepestInsertion',
    words: told('target.deepestInsertion', {}),
    read: (job) => join(job).fit.deepestInsertion,
  },
  { name: 'insertion', words: told('target.insertion', {}), read: (job) => designInsertion(job.frame) },
  { name: 'bottomGap', words: told('target.bottomGap', {}), read: (job) => join(job).fit.bottomGap },
  { name: 'visibleMargin', words: told('target.visibleMargin', {}), read: (job) => join(job).fit.visibleMargin },
  {
    name: 'frontFace',
    words: told('target.frontFace.most', {}),
    read: (job) => join(job).fit.frontFace?.most ?? null,
  },
  {
    name: 'frontFace.most',
    words: told('target.frontFace.most', {}),
    read: (job) => join(job).fit.frontFace?.most ?? null,
  },
  {
    name: 'frontFace.least',
    words: told('target.frontFace.least', {}),
    read: (job) => join(job).fit.frontFace?.least ?? null,
  },
  {
    name: 'backFace',
    words: told('target.backFace.most', {}),
    read: (job) => join(job).fit.backFace?.most ?? null,
  },
  {
    name: 'backFace.most',
    words: told('target.backFace.most', {}),
    read: (job) => join(job).fit.backFace?.most ?? null,
  },
  {
    name: 'backFace.least',
    words: told('target.backFace.least', {}),
    read: (job) => join(job).fit.backFace?.least ?? null,
  },
  {
    name: 'face',
    words: told('target.face', {}),
    read: (job) => {
      const range = join(job).fit.frontFace;
      return range === null ? null : (range.least + range.most) / 2;
    },
  },
  { name: 'thicknessAtTip', words: told('target.thicknessAtTip', {}), read: (job) => joinTongue(job).thicknessAtTip },
  {
    name: 'thicknessAtMouth',
    words: told('target.thicknessAtMouth', {}),
    read: (job) => joinTongue(job).thicknessAtMouth,
  },
];

const STATES = ['driest', 'dampest'] as const;
const OF_A_SEASON = ['insertion', 'bottomGap', 'clearance', 'bare'] as const;

/** The same at the driest and the dampest, for a job with seasons. */
const OF_THE_SEASONS: readonly Target[] = STATES.flatMap((state) =>
  OF_A_SEASON.map((figure) => ({
    name: `season.${state}.${figure}`,
    words: told(`target.at-${state}`, { figure: told(`target.${figure}`, {}) }),
    read: (job: Job) => {
      const report = answerSeasons(prepare(job)).report;
      return report === undefined ? null : report[state][figure];
    },
  })),
);

/** Every figure that a setting can be found for. */
export const TARGETS: readonly Target[] = [...OF_THE_JOINT, ...OF_THE_SEASONS];

/** The figure of this name. Throws RangeError for one that no joint has, the nearest named. */
export function needTarget(name: string): Target {
  const target = TARGETS.find((each) => each.name === name);
  if (target !== undefined) return target;
  const names = TARGETS.map((each) => each.name);
  throw new UnknownName('figure', name, names);
}

/** A figure of a job; null where it has none, or where the job could no longer be read from its file. */
export function readWhereReadable(target: Target, job: Job): number | null {
  return canBeRead(job) ? target.read(job) : null;
}
