import { SAME_LENGTH } from '@fielded/geometry';
import { cutSection } from '../joint/section.ts';
import { grooveNeed, insertedPart, readTongue } from '../joint/tongue.ts';
import type { Cut } from '../machining/cut.ts';
import { depthTaken } from '../machining/datum.ts';
import { sweepCut } from '../machining/sweep.ts';
import type { JointSizes } from './limits.ts';
import { alongDepth, alongReach, MOVE, movePlace } from './moves.ts';
import type { SideDepths } from './side.ts';

/**
 * Both sides' least depths from a section cut anew for each list of moves: right for every shape, a hundred times slower
 * than sliding surfaces. Where nothing is left of the tongue both depths are those of wood of no thickness.
 */
export function recutDepths(
  job: JointSizes,
  cuts: readonly Cut[],
): (moves: ArrayLike<number>, into: number, depths: SideDepths) => void {
  return (moves, into, depths) => {
    const panel = { thickness: job.panel.thickness, measured: job.panel.measured + moves[MOVE.thickness]! };
    const regions = cuts.map((cut, index) => {
      const height = moves[movePlace(index)]!;
      const fence = moves[movePlace(index) + 1]!;
      const moved = { ...cut, reach: cut.reach + alongReach(cut.tilt, height, fence) };
      const depth = depthTaken(cut, panel) + alongDepth(cut.tilt, height, fence);
      return { side: cut.side, edge: sweepCut(moved, depth).swept };
    });
    // Wide enough to hold the tongue, and a hair at least so that a tip has a width to be measured over.
    const width = Math.max(into, 4 * SAME_LENGTH);
    const part = insertedPart(readTongue(cutSection(panel.measured, width, regions)), width);
    const need = part.length > 0 ? grooveNeed(part) : { front: panel.measured, back: panel.measured };
    depths.front = panel.measured - need.front;
    depths.back = need.back;
  };
}
