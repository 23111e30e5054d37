import { createJoint, createReader, type Joint } from './joint.ts';
import type { JointSizes, SpreadLimits } from './limits.ts';
import { MOVE } from './moves.ts';
import { listSources } from './sources.ts';
import { type Stack, stackFigure } from './stack.ts';

type Run = 'under' | 'over';

/** The clearance's stack if the cuts were run another way round. */
export interface Arrangement extends Stack {
  /** For each cut in running order. */
  readonly runs: readonly Run[];
  /** Whether this is how the job runs them. */
  readonly given: boolean;
  /** Both heads at once, on one spindle; left out where each cut has its own set-up. */
  readonly stacked?: true;
  /** Stock thickness and the clearance it gives, mm, all else as drawn: over the ±, or 0.5 mm either way if that is less. */
  readonly byThickness: readonly (readonly [thickness: number, clearance: number])[];
}

/** Stock is followed this far, mm, even where its ± is less: so far a planer is easily off. */
export const LEAST_SHOWN = 0.5;
/** Steps on either side of the nominal thickness: enough for a curve, which with one cut on a face is straight. */
const STEPS = 10;

/** With more cuts that can be turned over than this, all of a face are turned together: 2⁴ arrangements are enough to read. */
const MOST_FREE = 4;

/**
 * The clearance's stack for every way of running the cuts under or over, narrowest worst case first; among equals the one
 * given, then the one with fewest cuts run over.
 *
 * A cut on edge stays as it is: over has no meaning there. The settings stay those of the job, for stock of the thickness
 * the cutters are set for.
 */
export function listArrangements(job: JointSizes, limits: SpreadLimits, asGiven: Joint): Arrangement[] {
  const given = job.cuts.map((cut) => cut.run);
  // On stock as thick as the cutters are set for, a cut leaves the same whichever way it is run.
  const edges = job.panel.measured === job.panel.thickness ? asGiven.edges : undefined;
  const found = waysToRun(job).map((runs): Arrangement => {
    const isGiven = runs.every((run, index) => run === given[index]);
    const joint = isGiven ? asGiven : createJoint(job, runs, asGiven.swelling, edges);
    const stack = stackFigure(joint, listSources(joint.cuts, limits), 'clearance');
    const byThickness = followThickness(joint, job.panel.measured, Math.max(limits.thickness, LEAST_SHOWN));
    return { runs, given: isGiven, ...stack, byThickness };
  });
  const width = ({ worst }: Arrangement) => Math.round((worst[1] - worst[0]) * 1e9);
  const overs = ({ runs }: Arrangement) => runs.filter((run) => run === 'over').length;
  return found.sort((a, b) => width(a) - width(b) || Number(b.given) - Number(a.given) || overs(a) - overs(b));
}

/** The clearance at even steps of stock thickness, `within` mm either side of what it measures. */
export function followThickness(joint: Joint, measured: number, within: number): [number, number][] {
  const read = createReader(joint, 'clearance');
  const moves = new Float64Array(joint.moveCount);
  return Array.from({ length: 2 * STEPS + 1 }, (_, step): [number, number] => {
    moves[MOVE.thickness] = (within * (step - STEPS)) / STEPS;
    return [measured + moves[MOVE.thickness]!, read(moves)];
  });
}

function waysToRun(job: JointSizes): Run[][] {
  const free = job.cuts.flatMap((cut, index) => (cut.tilt === Math.PI / 2 ? [] : [index]));
  const sides = (['front', 'back'] as const)
    .map((side) => free.filter((index) => job.cuts[index]!.side === side))
    .filter((group) => group.length > 0);
  // The cut that comes last is turned over first: a back cut, mostly, and so the front stays down.
  const groups = (free.length <= MOST_FREE ? free.map((index) => [index]) : sides).reverse();
  const ways = Array.from({ length: 2 ** groups.length }, (_, number) => {
    const runs: Run[] = job.cuts.map((cut) => cut.run);
    groups.forEach((group, bit) => {
      for (const index of group) runs[index] = number & (1 << bit) ? 'over' : 'under';
    });
    return runs;
  });
  const given = job.cuts.map((cut) => cut.run);
  const among = ways.some((runs) => runs.every((run, index) => run === given[index]));
  return among ? ways : [given, ...ways];
}
