import { answerJoint, answerKnives, answerSpread, type Job, ONE_JOINT, prepareJob, type Report } from '@fielded/core';
import { randomHead, rules } from '../support/heads.ts';
import { Random } from '../support/random.ts';
import { randomJob } from '../support/random-job.ts';
import type { Finding } from './fuzz-jobs.ts';
import { WIDTH, WOOD, worstFaults } from './moved-joint.ts';
import { depthBelowFace, surfacesAt } from './scan-line.ts';
import { steelFaults } from './steel-extents.ts';

/** Margins agree where they are within this, mm, and depths where they are within a hair. */
const SAME = 1e-6;
const HAIR = 1e-12;

/**
 * A job off its nominal sizes, with heads and a ± on everything: its margin, how deep it goes in, the steel for its settings and its
 * worst cases against what follows from the shapes' definitions alone.
 */
export function fuzzSetting(seed: number): Finding[] {
  const random = new Random(seed);
  const job = settingJob(seed, random);
  try {
    return settingFaults(job, settingReport(job), random).map((what) => ({ seed, what }));
  } catch (error) {
    return [{ seed, what: `threw ${error}` }];
  }
}

/** What is asked of a job's report: its joint, its knives and its worst cases, without advice. */
type SettingReport = Pick<Report, 'tongue' | 'fit' | 'knives' | 'spread'>;

export function settingReport(job: Job): SettingReport {
  const prepared = prepareJob(job);
  const { reports: knives } = answerKnives(prepared)!;
  const { report: spread } = answerSpread(prepared, ONE_JOINT);
  return { ...answerJoint(prepared), knives, ...(spread && { spread }) };
}

/** What of a job's report is not as the shapes say. */
export function settingFaults(job: Job, report: SettingReport, random: Random): string[] {
  const steel = job.cuts.flatMap((cut) => {
    const knife = report.knives?.find((each) => each.cut === cut.name);
    return knife ? steelFaults(job, cut, job.shop!.heads[cut.head!]!, knife) : [];
  });
  return [...marginFaults(job, report), ...deepestFaults(job, report), ...steel, ...worstFaults(job, report, random)];
}

export function settingJob(seed: number, random: Random): Job {
  const job = randomJob(seed);
  const off = (most: number) => (random.unit() < 0.4 ? 0 : random.between(0, most));
  const heads = Object.fromEntries(job.cuts.map((_, k) => [`h${k}`, randomHead(random)]));
  return {
    ...job,
    panel: { ...job.panel, film: off(0.1), species: WOOD.name, wood: WOOD, width: WIDTH },
    cuts: job.cuts.map((cut, k) => ({ ...cut, name: `cut ${k}`, head: `h${k}` })),
    shop: { units: 'mm', knives: {}, heads, machines: {}, rules },
    spread: {
      thickness: off(0.4),
      height: off(0.3),
      fence: off(0.6),
      grooveWidth: off(0.2),
      film: off(0.1),
      moisture: off(4),
      setback: off(0.3),
      grooveDepth: off(1.5),
      panelSize: off(4),
      square: random.unit() < 0.5 ? 0 : random.between(0, 0.02),
    },
  };
}

/** The margin, from the last place at which a front cut lies below the face, looked for in steps and then halved. */
function marginFaults(job: Job, { fit, tongue }: SettingReport): string[] {
  const { verdict, visibleMargin } = fit;
  if (verdict === null) return [];
  // A surface that runs out level meets the face anywhere within a hair of it.
  const [least, most] = [lastBelow(job, HAIR), lastBelow(job, -HAIR)];
  if (most === null || visibleMargin === null)
    return least === null && visibleMargin === null ? [] : [`margin ${visibleMargin}, scan lines end at ${least}`];
  const reached = verdict === 'will-not-enter' ? tongue.insertion : Math.min(tongue.insertion, fit.deepestInsertion!);
  const end = visibleMargin + reached;
  return end < (least ?? 0) - SAME || end > most + SAME
    ? [`margin ${visibleMargin}, scan lines ${(least ?? 0) - reached} to ${most - reached}`]
    : [];
}

/** The last place in from the edge where a front cut is more than `than` below the face, mm; null where none is. */
function lastBelow(job: Job, than: number): number | null {
  const fronts = job.cuts.filter(({ side }) => side === 'front');
  const below = (x: number) => fronts.some((cut) => depthBelowFace(job, cut, x) > than);
  let last = Math.max(...fronts.map(({ reach }) => reach)) + 1;
  while (last > -1 && !below(last)) last -= 0.01;
  if (last <= -1) return null;
  let [inside, outside] = [last, last + 0.01];
  for (let i = 0; i < 60; i++) {
    const middle = (inside + outside) / 2;
    if (below(middle)) inside = middle;
    else outside = middle;
  }
  return inside;
}

/** Up to the deepest insertion the tongue goes into the groove, and no further. */
function deepestFaults(job: Job, { fit }: SettingReport): string[] {
  const deepest = fit.deepestInsertion;
  if (deepest === null) return [];
  const { groove } = job.frame;
  const room = groove.width - 2 * (job.panel.film ?? 0);
  const need = (to: number) => {
    const mouth = surfacesAt(job, Math.max(0, to));
    // Named shapes only rise towards the face: thickest at the mouth.
    return mouth === null ? Number.NaN : mouth.top - mouth.bottom;
  };
  const faults: string[] = [];
  if (deepest > 1e-3 && need(deepest - 1e-6) > room + 1e-4) faults.push(`goes in ${deepest} where it is too thick`);
  if (deepest < groove.depth - 1e-3 && need(deepest + 1e-6) < room - 1e-4)
    faults.push(`stops at ${deepest} where it still fits`);
  return faults;
}
