import type { Job } from '../job/job.ts';
import { designInsertion } from '../joint/fit.ts';
import type { FitReport } from '../joint/fit-report.ts';
import type { Advice } from '../problem/problem.ts';
import { advise, told } from '../problem/say.ts';
import { applyWrites } from './apply-writes.ts';
import type { Effort } from './effort.ts';
import { clearanceIn, fitJob } from './join.ts';
import { roundSizes, roundUp } from './round-sizes.ts';

/** Depths that bring the clearance to the target, a cut at a time, back cuts first since they do not show. */
export function* depthsToTry(job: Job, fit: FitReport, effort: Effort): Generator<Advice> {
  for (const k of backFirst(job)) {
    const { name, depth } = job.cuts[k]!;
    const wanted = depthFor(job, k, fit, effort);
    if (wanted === null) continue;
    for (const mm of roundSizes(wanted, job.units)) {
      if (mm <= 0 || mm >= job.panel.thickness || Math.abs(mm - depth) < LEAST_CHANGE) continue;
      const writes = [{ path: ['cuts', k, 'depth'], mm }];
      const figures = { cut: name, by: Math.abs(mm - depth) };
      yield mm > depth
        ? advise('advice.deeper', figures, writes, job)
        : advise('advice.shallower', figures, writes, job);
    }
  }
}

/** Reaches that carry a cut past the frame, or its curve past where it wedges. */
export function reachesToTry(job: Job, fit: FitReport): Advice[] {
  const insertion = designInsertion(job.frame);
  const short = insertion - (fit.deepestInsertion ?? 0);
  return backFirst(job).flatMap((k) => {
    const { name, reach } = job.cuts[k]!;
    // A little past the frame where the cut itself ends short of it; else further in by what the tongue is short, or more of it
    // where the wood that wedges is a slope.
    const further = SLOPES.map((times) => reach + times * short);
    const wanted = reach < insertion ? [insertion + PAST_THE_FRAME, ...further] : further;
    return wanted.map((mm) => {
      const round = roundUp(mm, job.units);
      return advise('advice.reach', { cut: name, reach: round }, [{ path: ['cuts', k, 'reach'], mm: round }], job);
    });
  });
}

/** A cut carried past the frame and brought to its depth together: where it ends short of the frame and leaves too much wood. */
export function* reachesAndDepthsToTry(job: Job, effort: Effort): Generator<Advice> {
  const insertion = designInsertion(job.frame);
  for (const k of backFirst(job)) {
    const { name, reach } = job.cuts[k]!;
    if (reach >= insertion) continue;
    const further = roundUp(insertion + PAST_THE_FRAME, job.units);
    const moved = { path: ['cuts', k, 'reach'], mm: further };
    if (!effort.cutsSections(1)) return;
    const carried = applyWrites(job, [moved]);
    for (const depth of depthsToTry(carried, fitJob(carried), effort)) {
      const [set] = depth.writes;
      if (set === undefined || !('mm' in set) || set.path[1] !== k) continue;
      const by = Math.abs(set.mm - job.cuts[k]!.depth);
      const figures = { cut: name, reach: further, by };
      yield set.mm > job.cuts[k]!.depth
        ? advise('advice.reach-and-deeper', figures, [moved, set], job)
        : advise('advice.reach-and-shallower', figures, [moved, set], job);
    }
  }
}

/** Lands as long as the tongue, which keep a slope out of the groove. */
export function landsToTry(job: Job): Advice[] {
  const land = roundUp(designInsertion(job.frame) + PAST_THE_FRAME, job.units);
  return backFirst(job).flatMap((k) => {
    const { name, profile, knife } = job.cuts[k]!;
    // A knife of the shop is ground already.
    if (knife !== undefined || profile.shape === 'outline' || profile.shape === 'rebate') return [];
    if (profile.land >= land || land >= profile.reach) return [];
    const curved = profile.shape !== 'bevel';
    if (curved && profile.depth - profile.shoulder > profile.reach - land) return [];
    return [advise('advice.land', { cut: name, land }, [{ path: ['cuts', k, 'profile', 'land'], mm: land }], job)];
  });
}

/** A groove as much wider or narrower as the clearance is off. */
export function groovesToTry(job: Job, fit: FitReport): Advice[] {
  const { groove, thickness } = job.frame;
  if (fit.clearance === null) return [];
  return roundSizes(groove.width + job.fit.target - fit.clearance, job.units).flatMap((width) => {
    // A groove that is off by more is a slip elsewhere: changing it is no cure.
    if (Math.abs(width - groove.width) > MOST_WIDER || groove.setback + width > thickness) return [];
    return [advise('advice.groove', { width }, [{ path: ['frame', 'groove', 'width'], mm: width }], job)];
  });
}

/** The other ways to present the panel to one cut. */
export function presentationsToTry(job: Job, name: string | undefined): Advice[] {
  const k = job.cuts.findIndex((cut) => cut.name === name);
  if (k < 0) return [];
  const path = ['cuts', k, 'presented'];
  const onEdge = told('held.run-on-edge', {});
  // Over has no meaning on edge, and a file may not say both.
  const ways =
    job.cuts[k]!.run === 'over' ? [] : [advise('advice.present', { held: onEdge }, [{ path, word: 'on-edge' }], job)];
  return [...ways, advise('advice.present', { held: told('held.run-flat', {}) }, [{ path, word: 'flat' }], job)];
}

/** A groove is not made wider or narrower by more than this, mm. */
const MOST_WIDER = 1;
/** How many times the length that a tongue is short its cut is carried further in. */
const SLOPES = [1, 2];
/** A tongue is carried past the frame by this much, mm. */
const PAST_THE_FRAME = 1;
/** A setting is not moved by less than this, mm. */
const LEAST_CHANGE = 0.005;

/** The cuts by their places, back cuts first: they do not show. */
export function backFirst({ cuts }: Job): number[] {
  const isFront = (k: number) => Number(cuts[k]!.side === 'front');
  return cuts.map((_, k) => k).sort((a, b) => isFront(a) - isFront(b));
}

/** The depth of a cut at which the clearance is the target; null where its depth does not decide, or finding out costs too much. */
function depthFor(job: Job, k: number, { clearance }: FitReport, effort: Effort): number | null {
  const clearanceAt = (mm: number) => clearanceIn(applyWrites(job, [{ path: ['cuts', k, 'depth'], mm }]));
  const { target } = job.fit;
  if (clearance !== null && effort.cutsSections(1)) {
    const straight = job.cuts[k]!.depth + target - clearance;
    if (straight > 0 && isNear(clearanceAt(straight), target)) return straight;
  }
  if (!effort.cutsSections(HALVINGS)) return null;
  // Deeper only ever leaves less wood: no tongue at all counts as more clearance than any.
  let shallow = LEAST_CHANGE;
  let deep = job.panel.thickness;
  for (let step = 0; step < HALVINGS; step++) {
    const middle = (shallow + deep) / 2;
    if ((clearanceAt(middle) ?? Number.POSITIVE_INFINITY) > target) deep = middle;
    else shallow = middle;
  }
  return isNear(clearanceAt(shallow), target) ? shallow : null;
}

/** Halvings after which a depth is known to a millionth of a millimetre. */
const HALVINGS = 25;

function isNear(clearance: number | null, target: number): boolean {
  return clearance !== null && Math.abs(clearance - target) < LEAST_CHANGE;
}
