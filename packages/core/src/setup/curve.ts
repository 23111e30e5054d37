import { chooseGuide } from '../door/guide.ts';
import { tornShoulder } from '../door/shaped-head-report.ts';
import type { Job } from '../job/job.ts';
import type { Problem } from '../problem/problem.ts';
import { sayProblem, told } from '../problem/say.ts';
import type { Machine, Shop } from '../shop/shop.ts';
import { chooseWays } from './choose.ts';
import { handOf } from './hand.ts';
import type { CurveSetting, Rotation } from './set-up-report.ts';
import type { PanelsToRun } from './steps.ts';
import { type Judged, listWays } from './ways.ts';
import { prepareWork, type Work } from './work.ts';

/**
 * The best way to run the half of a shaped head that a cut's own rotation tears (formula A9): a knife of the same outline and the
 * other hand, fed by hand. Turning a head over changes run and rotation together and keeps the hand, so that the same half tears.
 * undefined where the shop has no such knife, or nothing can run it.
 */
export function findSecondWay(work: Work, shop: Shop, panels: PanelsToRun, job: Job): Judged | undefined {
  const { cut } = work;
  if (work.assumed) return undefined;
  const works = Object.keys(shop.knives).flatMap((knife) => {
    if (!isOtherHand(work, shop, knife)) return [];
    const other = prepareWork(shop, { ...cut, knife, head: shop.knives[knife]!.head ?? work.headName }, work);
    return other !== undefined && entersHollow(other, panels) ? [other] : [];
  });
  const machines = Object.fromEntries(
    Object.entries(shop.machines).map(([name, machine]) => [name, { ...machine, feeds: [] }]),
  );
  return chooseWays([works.flatMap((other) => listWays(other, { ...shop, machines }, job))], false)[0];
}

/** Whether a knife leaves the section of a cut's own and is ground for the other hand. */
function isOtherHand({ hand, knife: own, headName }: Work, { knives }: Shop, name: string): boolean {
  const other = knives[name]!;
  if (own === undefined || other.groundFor === undefined) return false;
  if (handOf(other.groundFor.run, other.groundFor.rotation) === hand) return false;
  // An outline taken off the steel leaves the same section in the same head alone.
  const sameSteel = own.measured === other.measured && (own.measured === 'wood' || other.head === headName);
  return sameSteel && JSON.stringify(other.profile) === JSON.stringify(own.profile);
}

/** Whether a cutter's bearing goes into the tightest hollow. */
function entersHollow({ head, cut }: Work, { hollow = null }: PanelsToRun): boolean {
  return hollow === null || hollow >= head.cuttingDiameter / 2 - cut.reach - 1e-9;
}

/** How shaped heads run in a way: a half where another set-up has the other, or the whole; undefined where none are run. */
export function setCurve(
  { work, machine, run, rotation }: Judged,
  panels: PanelsToRun,
  part: 'whole' | 'first' | 'second',
): CurveSetting | undefined {
  const { cut, head, of } = work;
  if (of !== 'panel' || cut.tilt !== 0 || (panels.shaped ?? []).length === 0) return undefined;
  const tears = tornShoulder({ side: cut.side, run }, rotation);
  const cutter = { cuttingRadius: head.cuttingDiameter / 2, reach: cut.reach };
  return {
    shoulder: part === 'whole' ? 'both' : tears === 'left' ? 'right' : 'left',
    tears,
    alone: part === 'second',
    guide: chooseGuide(cutter, panels.hollow ?? null, machine),
  };
}

/** What stands against running the curve, or spoils it: a mark for mechanical feed, one rotation, nothing to run on, a ring's shortfall. */
export function findCurveProblems(way: Judged, curve: CurveSetting, job: Job): Problem[] {
  const { work, machineName, machine } = way;
  const names = { cut: work.cut.name, machine: machineName, head: work.headName };
  const more = { about: names };
  const problems: Problem[] = [];
  if (work.head.feed === 'mechanical') problems.push(sayProblem('curve-fed-by-hand', work.at, names, job, more));
  if (curve.shoulder === 'both') {
    const figures = { ...names, shoulder: told(`half.${curve.tears}`, {}), ...otherHand(way) };
    problems.push(sayProblem(work.assumed ? 'one-rotation.assumed' : 'one-rotation', work.at, figures, job, more));
  }
  const { bearing, ring } = curve.guide;
  if (bearing.available !== null || !isGuideKnown(machine)) return problems;
  if (ring === null) problems.push(sayProblem('no-guide', work.at, { ...names, needed: bearing.needed }, job, more));
  else {
    const [at5, at10, at20] = ring.short.map(({ short }) => short);
    const figures = { ...names, ring: ring.diameter, at5: at5!, at10: at10!, at20: at20!, needed: bearing.needed };
    problems.push(sayProblem('ring-falls-short', work.at, figures, job, more));
  }
  return problems;
}

/** Whether the shop says what there is to run a curve on. */
export function isGuideKnown({ bearings, ringFences }: Pick<Machine, 'bearings' | 'ringFences'>): boolean {
  return bearings !== undefined || ringFences !== undefined;
}

/** What a knife of the other hand is ground for, to run as this one does. */
function otherHand({ run, rotation }: Judged) {
  const other: Rotation = rotation === 'clockwise' ? 'counterclockwise' : 'clockwise';
  return { run: told(`run.${run}`, {}), rotation: told(`rotation.${other}`, {}) };
}
