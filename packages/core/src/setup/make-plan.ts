import type { Job } from '../job/job.ts';
import type { Problem } from '../problem/problem.ts';
import type { Shop } from '../shop/shop.ts';
import { judgeChoice } from './judge-choice.ts';
import { adviseHead, type CanBeGround, tryOtherHeads } from './other-heads.ts';
import type { Plan, Step } from './plan.ts';
import { type FrameCutPlan, planFrame } from './plan-frame.ts';
import { type PanelPlan, planPanel } from './plan-panel.ts';
import { reportWay } from './report-way.ts';
import { makeSetUp } from './set-up.ts';
import type { SetUp } from './set-up-report.ts';
import { dropRepeats } from './stack.ts';
import { countSetUps, type Group, orderSteps, type PanelsToRun } from './steps.ts';
import type { Work } from './work.ts';

/** A plan and everything that is wrong with it. */
export interface Planned {
  readonly plan: Plan;
  readonly problems: readonly Problem[];
}

/**
 * Which machine, which way up and order, how high, how far out, how fast and in what order, for every cut that names a head.
 *
 * `canBeGround` tells whether a knife for a cut fits the head it names: with it, other heads are tried for what nothing can make.
 * Pure; every figure on stock of nominal thickness. What the shop file does not say stands against nothing and is listed as not
 * checked.
 */
export function makePlan(job: Job, shop: Shop, panels: PanelsToRun, canBeGround?: CanBeGround): Planned {
  const panel = planPanel(job, shop, panels);
  const frame = planFrame(job, shop, panels);
  const order = orderWork(panel, frame, panels);

  // Cuts that no way can make: report them, and try the shop's other heads.
  const stuck = [
    ...panel.works.filter((_, k) => panel.chosen[k] === undefined),
    ...frame.flatMap(({ work, way }) => (way ? [] : work)),
  ];
  const elsewhere = new Map(stuck.map((work) => [work, planElsewhere(work, shop, panels, canBeGround, job)]));
  const adviceFor = (work: Work) => (elsewhere.get(work) ?? []).map(({ advice }) => advice);

  const ways = [...panel.ways, ...frame.map((each) => each.ways)].flat();
  return {
    plan: {
      setups: order.setUps,
      ways: ways.map((way) => reportWay(way, panel.works, panel.chosen)),
      steps: order.steps,
      setUpCount: countSetUps(order.steps),
      stack: panel.stack?.report ?? null,
      otherHeads: [...elsewhere.values()].flat().map(({ setUp }) => setUp),
      correction: order.corrections,
    },
    problems: [
      ...panel.works.flatMap((work, k) => judgeChoice(job, work, panel.ways[k]!, panel.chosen[k], adviceFor(work))),
      ...frame.flatMap(({ work, ways: each, way }) => (way ? [] : judgeChoice(job, work, each, way, adviceFor(work)))),
      ...dropRepeats(order.setUps.flatMap((setUp) => setUp.problems)),
    ],
  };
}

/** All set-ups in the order they are numbered in, the correction of each, and the steps of work over them. */
function orderWork(panel: PanelPlan, frame: readonly FrameCutPlan[], panels: PanelsToRun) {
  // The frame's cuts stand by themselves: the back edge after glue-up, the others first.
  const isLate = ({ work }: FrameCutPlan) => work.frame?.kind === 'back edge';
  const early = frame.filter((one) => !isLate(one)).flatMap(({ setUp }) => setUp ?? []);
  const late = frame.filter(isLate).flatMap(({ setUp }) => setUp ?? []);

  const setUps: SetUp[] = [
    ...early,
    ...panel.setUps.map(({ setUp }) => setUp),
    ...panel.seconds.map(({ setUp }) => setUp),
    ...late,
  ];
  const corrections = [
    ...early.map(() => []),
    ...[...panel.setUps, ...panel.seconds].map(({ correction }) => correction),
    ...late.map(() => []),
  ];

  const places = panel.setUps.map((_, k) => early.length + k);
  const groups: Group[] = panel.stack?.ways ? [places] : places.map((place) => [place]);
  const numbered = (some: readonly SetUp[]) => some.map((setUp) => setUps.indexOf(setUp));
  const seconds = numbered(panel.seconds.map(({ setUp }) => setUp));
  const complete = panel.works.every((_, k) => panel.chosen[k] !== undefined);
  const steps: Step[] =
    setUps.length === 0 ? [] : orderSteps(setUps, groups, numbered(early), numbered(late), seconds, panels, complete);
  return { setUps, corrections, steps };
}

/** How a cut that nothing can make in its own head would be set up in other heads of the shop. */
function planElsewhere(work: Work, shop: Shop, panels: PanelsToRun, canBeGround: CanBeGround | undefined, job: Job) {
  if (canBeGround === undefined) return [];
  return tryOtherHeads(work, shop, job, canBeGround, panels.leastOpening).map((way) => {
    const setUp = makeSetUp(way, { ends: [], edges: [] }, null, undefined, shop.rules, job);
    return { setUp, advice: adviseHead(way, setUp, work.cut, job.cuts.indexOf(work.cut), job) };
  });
}
