import type { Job } from '../job/job.ts';
import { makeEdge } from '../joint/edge.ts';
import { designInsertion } from '../joint/fit.ts';
import { joinFrame } from '../report/join.ts';
import { answerSeasons } from '../report/seasons.ts';

/** A figure of a joint that a setting can be found for, mm. */
export interface Target {
  readonly name: string;
  /** Its name in a sentence. */
  readonly words: string;
  readonly read: (job: Job) => number | null;
}

const join = (job: Job) => joinFrame(job, makeEdge(job.panel, job.cuts));

/** Figures of the joint as made. `frontFace` and `backFace` alone mean the panel hard against that wall of the groove. */
const OF_THE_JOINT: readonly Target[] = [
  {
    name: 'clearance',
    words: 'clearance',
    // Not the fit's own, which takes what is within 1e-9 of nothing as nothing: that would leave 0 a range of settings.
    read: (job) => {
      const { grooveNeeded } = join(job).tongue;
      return grooveNeeded === null ? null : job.frame.groove.width - grooveNeeded;
    },
  },
  { name: 'deepestInsertion', words: 'deepest insertion', read: (job) => join(job).fit.deepestInsertion },
  { name: 'insertion', words: 'insertion', read: (job) => designInsertion(job.frame) },
  { name: 'bottomGap', words: 'bottom gap', read: (job) => join(job).fit.bottomGap },
  { name: 'visibleMargin', words: 'visible margin', read: (job) => join(job).fit.visibleMargin },
  {
    name: 'frontFace',
    words: 'step of the front face (panel pressed forward)',
    read: (job) => join(job).fit.frontFace?.most ?? null,
  },
  {
    name: 'frontFace.most',
    words: 'step of the front face (panel pressed forward)',
    read: (job) => join(job).fit.frontFace?.most ?? null,
  },
  {
    name: 'frontFace.least',
    words: 'step of the front face (panel pressed back)',
    read: (job) => join(job).fit.frontFace?.least ?? null,
  },
  {
    name: 'backFace',
    words: 'step of the back face (panel pressed back)',
    read: (job) => join(job).fit.backFace?.most ?? null,
  },
  {
    name: 'backFace.most',
    words: 'step of the back face (panel pressed back)',
    read: (job) => join(job).fit.backFace?.most ?? null,
  },
  {
    name: 'backFace.least',
    words: 'step of the back face (panel pressed forward)',
    read: (job) => join(job).fit.backFace?.least ?? null,
  },
  { name: 'thicknessAtTip', words: 'thickness at the tip', read: (job) => join(job).tongue.thicknessAtTip },
  { name: 'thicknessAtMouth', words: 'thickness at the mouth', read: (job) => join(job).tongue.thicknessAtMouth },
];

const STATES = ['driest', 'dampest'] as const;
const OF_A_SEASON = {
  insertion: 'insertion',
  bottomGap: 'bottom gap',
  clearance: 'clearance',
  bare: 'bare strip',
} as const;

/** The same at the driest and the dampest, for a job with seasons. */
const OF_THE_SEASONS: readonly Target[] = STATES.flatMap((state) =>
  Object.entries(OF_A_SEASON).map(([figure, words]) => ({
    name: `season.${state}.${figure}`,
    words: `${words} at the ${state}`,
    read: (job: Job) => {
      const report = answerSeasons({ job, fit: join(job).fit }).report;
      return report === undefined ? null : report[state][figure as keyof typeof OF_A_SEASON];
    },
  })),
);

/** Every figure that a setting can be found for. */
export const TARGETS: readonly Target[] = [...OF_THE_JOINT, ...OF_THE_SEASONS];
