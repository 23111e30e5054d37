import type { Job } from '../job/job.ts';
import { designInsertion } from '../joint/fit.ts';
import type { Problem } from '../problem/problem.ts';
import type { Shop } from '../shop/shop.ts';
import { chooseWays } from './choose.ts';
import { correctSetting, correctTogether, thicknessLeft } from './correction.ts';
import { findSecondWay, setCurve } from './curve.ts';
import { frameWorks } from './frame-works.ts';
import { judgeChoice } from './judge-choice.ts';
import { adviseHead, type CanBeGround, tryOtherHeads } from './other-heads.ts';
import type { Plan, SetUp, Way } from './plan.ts';
import { makeSetUp } from './set-up.ts';
import { type JudgedStack, judgeStack } from './stack.ts';
import { countSetUps, type Group, orderSteps, type PanelsToRun } from './steps.ts';
import { type Judged, listWays } from './ways.ts';
import { prepareWork, type Work } from './work.ts';

/** A plan and everything that is wrong with it. */
export interface Planned {
  readonly plan: Plan;
  readonly problems: readonly Problem[];
}

/**
 * Which machine, which way up and round, how high, how far out, how fast and in what order, for every cut that names a head.
 *
 * `canBeGround` tells whether a knife for a cut fits the head it names: with it, other heads are tried for what nothing can make.
 * Pure; every figure on stock of nominal thickness. What the shop file does not say stands against nothing and is listed as not
 * checked.
 */
export function makePlan(job: Job, shop: Shop, panels: PanelsToRun, canBeGround?: CanBeGround): Planned {
  const works = job.cuts.flatMap((cut, k): Work[] => {
    const work = prepareWork(shop, cut, { at: `cuts[${k}]`, of: 'panel', thickness: job.panel.thickness });
    return work ? [work] : [];
  });
  // How each cut is made: both heads at once where that can be, else the best way of each.
  const ways = works.map((work) => listWays(work, shop, job));
  const stack = works.length === job.cuts.length ? judgeStack(works, shop, job) : undefined;
  const chosen = stack?.ways ? inOrder(works, stack.ways) : chooseWays(ways, panels.narrow.length > 0);

  // A sheet for each cut of the panel, and a second for the shaped heads whose other half must turn the other way.
  const at = designInsertion(job.frame);
  const runnable = works.filter((_, k) => chosen[k] !== undefined);
  const seconds = secondWays(chosen, stack?.ways !== undefined, shop, panels, job);
  const setups = works.flatMap((work, k) => {
    const way = chosen[k];
    if (way === undefined) return [];
    const before = madeBefore(work, runnable, stack, panels);
    const thickness = thicknessLeft([...before.ends, work], at);
    const curve = setCurve(way, panels, seconds[k] === undefined ? 'whole' : 'first');
    return [makeSetUp(way, before, thickness === null ? null : { at, thickness }, curve, shop.rules, job)];
  });
  const correction = runnable.map((_, k) =>
    stack?.ways ? correctTogether(runnable, at, job.units) : correctSetting(runnable, k, setups[k]!.run, at, job.units),
  );
  const others = seconds.flatMap((way) => (way ? [planSecond(way, panels, at, shop, job)] : []));

  // The frame's cuts stand by themselves: the back edge after glue-up, the others first.
  const frame = frameWorks(job, shop).map((work) => planAlone(work, shop, job, panels));
  const [before, after] = [false, true].map((late) =>
    frame.filter(({ work }) => (work.frame?.kind === 'back edge') === late).flatMap(({ setUp }) => setUp ?? []),
  ) as [SetUp[], SetUp[]];

  // The order of work over all of them.
  const all = [...before, ...setups, ...others.map(({ setUp }) => setUp), ...after];
  const places = setups.map((_, k) => before.length + k);
  const groups: Group[] = stack?.ways ? [places] : places.map((place) => [place]);
  const numbered = (some: readonly SetUp[]) => some.map((setUp) => all.indexOf(setUp));
  const steps =
    all.length === 0
      ? []
      : orderSteps(all, groups, numbered(before), numbered(after), numbered(others.map(({ setUp }) => setUp)), panels);

  // What nothing can make, and whether another head of the shop would.
  const stuck = [
    ...works.filter((_, k) => chosen[k] === undefined),
    ...frame.flatMap(({ work, way }) => (way ? [] : work)),
  ];
  const elsewhere = new Map(stuck.map((work) => [work, planElsewhere(work, shop, panels, canBeGround, job)]));
  const adviceFor = (work: Work) => (elsewhere.get(work) ?? []).map(({ advice }) => advice);
  const problems = [
    ...works.flatMap((work, k) => judgeChoice(job, work, ways[k]!, chosen[k], adviceFor(work))),
    ...frame.flatMap(({ work, ways: each, way }) => (way ? [] : judgeChoice(job, work, each, way, adviceFor(work)))),
    ...all.flatMap((setUp) => setUp.problems),
  ];
  return {
    plan: {
      setups: all,
      ways: [...ways, ...frame.map((each) => each.ways)].flatMap((each) =>
        each.map((way) => reportWay(way, works, chosen)),
      ),
      steps,
      setUpCount: countSetUps(steps),
      stack: stack?.report ?? null,
      otherHeads: [...elsewhere.values()].flat().map(({ setUp }) => setUp),
      correction: [
        ...before.map(() => []),
        ...correction,
        ...others.map((other) => other.correction),
        ...after.map(() => []),
      ],
    },
    problems,
  };
}

/** How a cut that nothing can make in its own head would be set up in other heads of the shop. */
function planElsewhere(work: Work, shop: Shop, panels: PanelsToRun, canBeGround: CanBeGround | undefined, job: Job) {
  if (canBeGround === undefined) return [];
  return tryOtherHeads(work, shop, job, canBeGround, panels.leastOpening).map((way) => {
    const setUp = makeSetUp(way, { ends: [], edges: [] }, null, undefined, shop.rules, job);
    return { setUp, advice: adviseHead(way, setUp, work.cut, job.cuts.indexOf(work.cut), job) };
  });
}

/** A cut that depends on no other. */
function planAlone(work: Work, shop: Shop, job: Job, panels: PanelsToRun) {
  const ways = listWays(work, shop, job, panels.leastOpening);
  const [way] = chooseWays([ways], false);
  const setUp = way && makeSetUp(way, { ends: [], edges: [] }, null, undefined, shop.rules, job);
  return { work, ways, way, setUp };
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
function planSecond(way: Judged, panels: PanelsToRun, at: number, shop: Shop, job: Job) {
  const { work, run } = way;
  const thickness = thicknessLeft([work], at);
  const testPiece = thickness === null ? null : { at, thickness };
  const curve = setCurve(way, panels, 'second');
  return {
    setUp: makeSetUp(way, { ends: [], edges: [] }, testPiece, curve, shop.rules, job),
    correction: correctSetting([work], 0, run, at, job.units),
  };
}

/** The stack's two ways in the order of the cuts. */
function inOrder(works: readonly Work[], ways: readonly [Judged, Judged]): Judged[] {
  return works.map((work) => ways.find((way) => way.work === work)!);
}

/** What is cut when a cut's turn comes: on the ends in running order, on the edges of narrow panels backwards. */
function madeBefore(work: Work, works: readonly Work[], stack: JudgedStack | undefined, panels: PanelsToRun) {
  if (stack?.ways) {
    const others = works.filter((each) => each !== work);
    return { ends: others, edges: others };
  }
  const place = works.indexOf(work);
  const ends = works.slice(0, place);
  return { ends, edges: panels.narrow.length > 0 ? works.slice(place + 1) : ends };
}

function reportWay(way: Judged, works: readonly Work[], chosen: readonly (Judged | undefined)[]): Way {
  const { work, machineName, run, rotation, against, warnings } = way;
  return {
    cut: work.cut.name,
    machine: machineName,
    head: work.headName,
    run,
    rotation,
    works: against.length === 0,
    against: against.map(({ code }) => code),
    problems: [...against, ...warnings],
    tonguePerStock: tonguePerStock(way, works, chosen),
  };
}

/**
 * Change of the tongue's thickness for each mm of stock: the whole of it, less once for each side whose deepest cut at the edge
 * is run over the stock and so follows it (formula 3).
 */
function tonguePerStock(way: Judged, works: readonly Work[], chosen: readonly (Judged | undefined)[]): number | null {
  if (way.work.of === 'frame') return null;
  const follows = (side: 'front' | 'back') => {
    const mine = works.filter((work) => work.of === 'panel' && work.cut.side === side);
    if (mine.length === 0) return 0;
    const deepest = mine.reduce((one, other) => (other.atEdge > one.atEdge ? other : one));
    const run = deepest === way.work ? way.run : (chosen[works.indexOf(deepest)]?.run ?? deepest.cut.run);
    return run === 'over' && deepest.cut.tilt !== Math.PI / 2 ? 1 : 0;
  };
  return 1 - follows('front') - follows('back');
}
