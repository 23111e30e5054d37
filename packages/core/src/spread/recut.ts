import { arc, type Chain, type Curve, line, SAME_LENGTH } from '@fielded/geometry';
import { cutSection } from '../joint/section.ts';
import { countInserted, grooveNeed, readTongue } from '../joint/tongue.ts';
import type { Cut } from '../machining/cut.ts';
import { depthTaken } from '../machining/datum.ts';
import { sweepCut } from '../machining/sweep.ts';
import type { JointSizes } from './limits.ts';
import { alongDepth, alongReach, MOVE, movePlace, outOfSquare } from './moves.ts';
import type { SideDepths } from './side-depth.ts';

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
      const lean = outOfSquare(moves[movePlace(index) + 2]!);
      const { swept } = sweepCut(moved, depth);
      return { side: cut.side, edge: lean === 0 ? swept : leanChain(swept, lean) };
    });
    // Wide enough to hold the tongue, and a hair at least so that a tip has a width to be measured over.
    const width = Math.max(into, 4 * SAME_LENGTH);
    const tongue = readTongue(cutSection(panel.measured, width, regions));
    const nothing = countInserted(tongue, width) === 0;
    const need = nothing ? { front: panel.measured, back: panel.measured } : grooveNeed(tongue, width);
    depths.front = panel.measured - need.front;
    depths.back = need.back;
  };
}

/** Arcs that lean are made of arcs that turn no more than this, radians, and less where they are large. */
const MOST_TURN = 0.03;
/** How far such an arc may lie off the true curve, an arc of an ellipse, mm; and that distance over r·lean·turn³ (measured). */
const MOST_OFF = 1e-8;
const OFF_BY = 0.025;

/** A chain that goes `lean` less deep for each mm in from the edge. */
function leanChain(chain: Chain, lean: number): Chain {
  const move = (x: number, y: number): [number, number] => [x, y - lean * x];
  const leaning = chain.flatMap((c) =>
    c.turn === 0 ? [line(...move(c.x0, c.y0), ...move(c.x1, c.y1))] : leanArc(c, lean, move),
  );
  // It runs out through the face, deeper there than it was or not.
  const { x1, y1 } = leaning.at(-1)!;
  return y1 > 0 ? [...leaning, line(x1, y1, x1, 0)] : leaning;
}

function leanArc(c: Curve, lean: number, move: (x: number, y: number) => [number, number]): Curve[] {
  const from = Math.atan2(c.y0 - c.cy, c.x0 - c.cx);
  const turned = c.turn * (Math.atan2(c.y1 - c.cy, c.x1 - c.cx) - from);
  const angle = turned <= 0 ? turned + 2 * Math.PI : turned;
  const turn = Math.min(MOST_TURN, Math.cbrt(MOST_OFF / (OFF_BY * c.r * Math.abs(lean))));
  const count = Math.ceil(angle / turn);
  const at = (part: number): [number, number] => {
    if (part === 0) return move(c.x0, c.y0);
    if (part === count) return move(c.x1, c.y1);
    const to = from + (c.turn * angle * part) / count;
    return move(c.cx + c.r * Math.cos(to), c.cy + c.r * Math.sin(to));
  };
  return Array.from({ length: count }, (_, i) => arcThrough(at(i), at(i + 0.5), at(i + 1), c.turn as -1 | 1));
}

/** The arc from a to b that passes p between them. */
function arcThrough(a: readonly number[], p: readonly number[], b: readonly number[], turn: -1 | 1): Curve {
  const [ux, uy] = [p[0]! - a[0]!, p[1]! - a[1]!];
  const [vx, vy] = [b[0]! - a[0]!, b[1]! - a[1]!];
  const cross = 2 * (ux * vy - uy * vx);
  const [u, v] = [ux * ux + uy * uy, vx * vx + vy * vy];
  const [cx, cy] = [a[0]! + (vy * u - uy * v) / cross, a[1]! + (ux * v - vx * u) / cross];
  return arc(a[0]!, a[1]!, b[0]!, b[1]!, cx, cy, turn);
}
