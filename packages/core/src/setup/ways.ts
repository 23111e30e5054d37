import type { Voice } from '../problem/language.ts';
import type { Problem } from '../problem/problem.ts';
import { sayProblem, told } from '../problem/say.ts';
import type { Shop } from '../shop/shop.ts';
import { findAgainst, type LeastOpening } from './against.ts';
import { chooseFeed, feedsFor } from './feed.ts';
import { findHole } from './hole.ts';
import { poseHead } from './pose.ts';
import type { Rotation, Run } from './set-up-report.ts';
import { chooseSpeed } from './speed.ts';
import type { Trial } from './trial.ts';
import type { Work } from './work.ts';

/** A way with its figures and what is said of it: `against` stops it, `warnings` only spoil the work. */
export interface Judged extends Trial {
  readonly against: readonly Problem[];
  readonly warnings: readonly Problem[];
}

const RUNS: readonly Run[] = ['under', 'over'];
const ROTATIONS: readonly Rotation[] = ['counterclockwise', 'clockwise'];

/** Every way of making a cut in a shop: each machine, both runs, both rotations. On edge there is one run. `opening`: of the frames that it is run in. */
export function listWays(work: Work, shop: Shop, voice: Voice, opening?: LeastOpening): Judged[] {
  return tryWays(work, shop).map((trial) => ({
    ...trial,
    against: findAgainst(trial, shop.rules, opening).map((say) => say(voice)),
    warnings: warnOf(trial, shop.rules, voice),
  }));
}

/** The ways of making a cut that nothing stands against; the others are not put into words. */
export function listWorking(work: Work, shop: Shop, voice: Voice, opening?: LeastOpening): Judged[] {
  return tryWays(work, shop)
    .filter((trial) => findAgainst(trial, shop.rules, opening).length === 0)
    .map((trial) => ({ ...trial, against: [], warnings: warnOf(trial, shop.rules, voice) }));
}

function tryWays(work: Work, { machines, rules }: Shop): Trial[] {
  const runs = work.cut.tilt === Math.PI / 2 ? RUNS.slice(0, 1) : RUNS;
  const poses = runs.map((run) => {
    const pose = poseHead(work, run);
    return { run, pose: { ...pose, gap: pose.gap + 2 * rules.fenceClearance } };
  });
  return Object.entries(machines).flatMap(([machineName, machine]) => {
    const speed = chooseSpeed(work.head, machine, rules);
    return poses.flatMap(({ run, pose }) => {
      const hole = findHole(work, run, pose.seat, machine, rules);
      return ROTATIONS.map((rotation) => ({ work, machineName, machine, run, rotation, pose, hole, speed }));
    });
  });
}

/** Whether the head stands the other way up than its knife was ground for. */
export function isTurnedOver({ work, run }: Pick<Trial, 'work' | 'run'>): boolean {
  return run !== work.groundRun;
}

/** What spoils the work and stops nothing: a rim that is too slow, marks that are too coarse, a slot that is not marked. */
export function warnOf(trial: Trial, rules: Shop['rules'], voice: Voice): Problem[] {
  const { work, machineName, machine, speed } = trial;
  const { head, headName, cut, at } = work;
  const names = { cut: cut.name, machine: machineName, head: headName };
  const more = { about: names };
  const problems: Problem[] = [];
  if (speed?.tooSlow) {
    const figures = { ...names, speed: speed.speed, rim: speed.rim, least: rules.rimSpeed[0] };
    problems.push(sayProblem('rim-too-slow', at, figures, voice, more));
  }
  if (speed !== undefined) {
    const feeds = feedsFor(work, machine);
    const { tooCoarse, feedRate, pitch } = chooseFeed(head, { feeds }, speed.speed, leastRadiusOf(work), rules);
    const figures = { ...names, feed: feedRate, pitch, most: rules.knifeMark };
    if (tooCoarse) problems.push(sayProblem('coarse-marks', at, figures, voice, more));
  }
  if (work.knife?.groundFor !== undefined && head.slots !== undefined && !head.slots.includes(work.groundRun)) {
    const figures = { ...names, knife: cut.knife ?? '', run: told(`run.${work.groundRun}`, {}) };
    problems.push(sayProblem('slot-not-marked', at, figures, voice, more));
  }
  return problems;
}

/** The cutting radius where a cut ends, mm: at the edge of flat work, at the worked face of work on edge. */
export function leastRadiusOf({ head, cut }: Work): number {
  const radius = head.cuttingDiameter / 2;
  if (cut.tilt === 0) return radius - cut.reach;
  if (cut.tilt === Math.PI / 2) return radius - cut.depth;
  return radius - cut.reach * Math.cos(cut.tilt) - cut.depth * Math.sin(cut.tilt);
}
