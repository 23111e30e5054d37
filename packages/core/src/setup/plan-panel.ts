import type { Job } from '../job/job.ts';
import { designInsertion } from '../joint/fit.ts';
import type { Shop } from '../shop/shop.ts';
import { chooseWays } from './choose.ts';
import { correctSetting, correctTogether, placeToMeasure, type RunWork, thicknessLeft } from './correction.ts';
import { findSecondWay, setCurve } from './curve.ts';
import type { Correction } from './plan.ts';
import { type MadeBefore, makeSetUp } from './set-up.ts';
import type { SetUp } from './set-up-report.ts';
import { type JudgedStack, judgeStack } from './stack.ts';
import type { PanelsToRun } from './steps.ts';
import { type Judged, listWays } from './ways.ts';
import { prepareWork, type Work } from './work.ts';

/** A set-up, and what to move where its test piece reads too much or too little. */
interface Corrected {
  readonly setUp: SetUp;
  readonly correction: Correction[];
}

/** How the panel's cuts are made. `works`, `ways` and `chosen` have an entry for each of them, `setUps` for each that can be made. */
export interface PanelPlan {
  readonly works: readonly Work[];
  readonly ways: readonly (readonly Judged[])[];
  readonly chosen: readonly (Judged | undefined)[];
  /** Both heads on one spindle, where there are two cuts to be made so; `ways` in it where that is how they are made. */
  readonly stack: JudgedStack | undefined;
  readonly setUps: readonly Corrected[];
  /** Further set-ups for the shaped heads whose other half must turn the other way. */
  readonly seconds: readonly Corrected[];
}

/** Plans the panel's cuts: both heads at once where that can be, else the best way of each. */
export function planPanel(job: Job, shop: Shop, panels: PanelsToRun): PanelPlan {
  const works = job.cuts.flatMap((cut, k): Work[] => {
    const work = prepareWork(shop, cut, { at: `cuts[${k}]`, of: 'panel', thickness: job.panel.thickness });
    return work ? [work] : [];
  });
  const ways = works.map((work) => listWays(work, shop, job));
  const stack = works.length === job.cuts.length ? judgeStack(works, shop, job) : undefined;
  const chosen = stack?.ways ? inOrder(works, stack.ways) : chooseWays(ways, panels.narrow.length > 0);
  const seconds = secondWays(chosen, stack?.ways !== undefined, shop, panels, job);
  const mouth = designInsertion(job.frame);
  return {
    works,
    ways,
    chosen,
    stack,
    setUps: setUpCuts(works, chosen, seconds, stack, mouth, shop, panels, job),
    seconds: seconds.flatMap((way) =>
      way ? [planSecond(way, panels, placeToMeasure(way.work, mouth), shop, job)] : [],
    ),
  };
}

/** A set-up for each cut that can be made, its test piece measured at the groove's `mouth`, mm in from the edge, on the cuts made before it. */
function setUpCuts(
  works: readonly Work[],
  chosen: readonly (Judged | undefined)[],
  seconds: readonly (Judged | undefined)[],
  stack: JudgedStack | undefined,
  mouth: number,
  shop: Shop,
  panels: PanelsToRun,
  job: Job,
): Corrected[] {
  const runnable = works.filter((_, k) => chosen[k] !== undefined);
  return works.flatMap((work, k) => {
    const way = chosen[k];
    if (way === undefined) return [];
    const before = madeBefore(work, runnable, stack, panels);
    const at = Math.min(...(stack?.ways ? runnable : [work]).map((each) => placeToMeasure(each, mouth)));
    const together = works.flatMap((each, j) => (chosen[j] ? [{ work: each, run: chosen[j].run }] : []));
    const earlier = together.filter((each) => before.ends.includes(each.work));
    const testPiece = testPieceAfter(way, earlier, stack?.ways ? earlier : [], at, job);
    const curve = setCurve(way, panels, seconds[k] === undefined ? 'whole' : 'first');
    const setUp = makeSetUp(way, before, testPiece, curve, shop.rules, job);
    const correction = stack?.ways
      ? correctTogether(runnable, at, job.units)
      : correctSetting(runnable, runnable.indexOf(work), setUp.run, at, job.units);
    return [{ setUp, correction }];
  });
}

/** For each cut, the way that runs the other half of shaped heads; both heads at once turn back together or not at all. */
function secondWays(
  chosen: readonly (Judged | undefined)[],
  together: boolean,
  shop: Shop,
  panels: PanelsToRun,
  job: Job,
): (Judged | undefined)[] {
  const seconds = chosen.map((way) =>
    way === undefined || setCurve(way, panels, 'whole') === undefined
      ? undefined
      : findSecondWay(way.work, shop, panels, job),
  );
  const all = seconds.every((second) => second !== undefined);
  return together && !all ? seconds.map(() => undefined) : seconds;
}

/** The second rotation of a cut, set up for the shaped heads alone: a spare piece with this cut alone is its test piece. */
function planSecond(way: Judged, panels: PanelsToRun, at: number, shop: Shop, job: Job): Corrected {
  const { work, run } = way;
  const testPiece = testPieceAfter(way, [], [], at, job);
  const curve = setCurve(way, panels, 'second');
  return {
    setUp: makeSetUp(way, { ends: [], edges: [] }, testPiece, curve, shop.rules, job),
    correction: correctSetting([work], 0, run, at, job.units),
  };
}

/** What a test piece measures after the cuts before and this one, and a fresh one after this set-up alone, `at` mm in from the edge. */
function testPieceAfter(
  { work, run }: Judged,
  earlier: readonly RunWork[],
  withIt: readonly RunWork[],
  at: number,
  { panel }: Job,
): SetUp['testPiece'] {
  const thickness = thicknessLeft([...earlier, { work, run }], at, panel);
  const alone = thicknessLeft([...withIt, { work, run }], at, panel);
  return thickness === null || alone === null ? null : { at, thickness, alone };
}

/** The stack's two ways in the order of the cuts. */
function inOrder(works: readonly Work[], ways: readonly [Judged, Judged]): Judged[] {
  return works.map((work) => ways.find((way) => way.work === work)!);
}

/** What is cut when a cut's turn comes: on the ends in running order, on the edges of narrow panels backwards. */
function madeBefore(
  work: Work,
  works: readonly Work[],
  stack: JudgedStack | undefined,
  panels: PanelsToRun,
): MadeBefore {
  if (stack?.ways) {
    const others = works.filter((each) => each !== work);
    return { ends: others, edges: others };
  }
  const place = works.indexOf(work);
  const ends = works.slice(0, place);
  return { ends, edges: panels.narrow.length > 0 ? works.slice(place + 1) : ends };
}
