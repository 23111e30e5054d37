import type { Job } from '../job/job.ts';
import type { Shop } from '../shop/shop.ts';
import { chooseWays } from './choose.ts';
import { frameWorks } from './frame-works.ts';
import { makeSetUp } from './set-up.ts';
import type { SetUp } from './set-up-report.ts';
import type { PanelsToRun } from './steps.ts';
import { type Judged, listWays } from './ways.ts';
import type { Work } from './work.ts';

/** A cut on the frame: its ways, and the best of them set up; neither where nothing can make it. */
export interface FrameCutPlan {
  readonly work: Work;
  readonly ways: readonly Judged[];
  readonly way: Judged | undefined;
  readonly setUp: SetUp | undefined;
}

/** Plans the frame's cuts, each by itself. */
export function planFrame(job: Job, shop: Shop, panels: PanelsToRun): FrameCutPlan[] {
  return frameWorks(job, shop).map((work) => planAlone(work, shop, job, panels));
}

/** A cut that depends on no other. */
function planAlone(work: Work, shop: Shop, job: Job, panels: PanelsToRun): FrameCutPlan {
  const ways = listWays(work, shop, job, panels.leastOpening);
  const [way] = chooseWays([ways], false);
  const setUp = way && makeSetUp(way, { ends: [], edges: [] }, null, undefined, shop.rules, job);
  return { work, ways, way, setUp };
}
