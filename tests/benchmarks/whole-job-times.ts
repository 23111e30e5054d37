import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { answerPlan, evaluateJoint, matchKnives, prepareJob, readJob } from '@fielded/core';
import type { BlankRules } from '../../packages/core/dist/door/blank-rules.js';
import { type BlankItem, makeBlanks } from '../../packages/core/dist/door/blanks.js';
import { acceptJob } from '../../packages/core/dist/job/given-job.js';
import { makeEdge } from '../../packages/core/dist/joint/edge.js';
import { describeJoint } from '../../packages/core/dist/report/joint.js';
import { canGrindFor } from '../../packages/core/dist/report/knives.js';
import { FOUR_CUTS } from '../support/four-cuts.ts';
import { jobWithKnives } from '../support/matching-jobs.ts';
import { largeShopJob } from '../support/plans.ts';
import { Random } from '../support/random.ts';
import { timeEach } from '../support/timing.ts';
import type { Warm } from './warm-times.ts';

/** Times what a whole job takes beside its joint: set-ups, blanks, the shop's knives, a drag with all of it in the file. */
export function timeWholeJobs(): Warm[] {
  const [able, unable] = [prepareJob(largeShopJob('can')), prepareJob(largeShopJob('cannot'))];
  const dragged = readJob(FOUR_CUTS, { loadShop: () => SHOP }).job!;
  const knives = jobWithKnives(new Random(47), 200);
  return [
    {
      what: 'plan 4 cuts on 4 machines with 10 heads',
      ms: timeEach(() => answerPlan(able)!.plan.setups.length),
      goal: 5,
    },
    {
      what: 'the same where one cut has to be tried in every other head',
      ms: timeEach(() => answerPlan(unable)!.plan.setups.length),
      goal: 5,
    },
    ...[
      ['24 panels of a length in blanks, exactly', 24],
      ['300 panels of a length in blanks', 300],
      ['10,000 panels of a length in blanks', 10_000],
    ].map(([what, count]) => {
      const panels = narrowPanels(count as number);
      return { what: what as string, ms: timeEach(() => makeBlanks(panels, RULES).blanks.length), goal: 2000 };
    }),
    {
      what: 'match a cut with 200 knives of a shop',
      ms: timeEach(() => matchKnives(knives, 'raise').length),
      goal: 200,
    },
    {
      what: 'the joint alone, 4 cuts, a shop, a season and a spread, as in a drag',
      ms: timeEach(() => evaluateJoint(dragged).section.removedArea),
      goal: 0.05,
    },
  ];
}

/** What a drag with four cuts, a shop, a season and a spread is made of, and one other head tried for a cut, ms. */
export function timeDragParts(): Record<'checked' | 'made' | 'told' | 'headTried', number> {
  const job = readJob(FOUR_CUTS, { loadShop: () => SHOP }).job!;
  const prepared = prepareJob(job);
  const stuck = largeShopJob('cannot');
  return {
    checked: timeEach(() => acceptJob(job).cuts.length),
    made: timeEach(() => makeEdge(job.panel, job.cuts).section.wood.area),
    told: timeEach(() => describeJoint(prepared).section.width),
    headTried: timeEach(() => Number(canGrindFor(stuck, { ...stuck.cuts[2]!, head: 'n0' }))),
  };
}

const RULES: BlankRules = { leastEndGrainWidth: 300, greatestBlankWidth: 600, kerf: 3.2, edgeAllowance: 1 };

/** Panels too narrow to be run on their end grain one by one. */
function narrowPanels(count: number): BlankItem[] {
  const random = new Random(5);
  return Array.from({ length: count }, (_, k) => ({ door: `d${k}`, width: random.between(60, 290), length: 600 }));
}

const SHOP = readFileSync(fileURLToPath(new URL('../../examples/shop/shop.yaml', import.meta.url)), 'utf8');
