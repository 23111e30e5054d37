import { arcAngle, pointAlong } from '../curve/along.ts';
import type { Box } from '../curve/box.ts';
import { arc, type Curve } from '../curve/curve.ts';
import { curveBox } from '../curve/curve-box.ts';
import { distanceTo } from '../curve/distance.ts';
import type { Loop } from '../loop/loop.ts';
import { BoxTree } from './box-tree.ts';
import { drawParallels, type Join } from './parallel.ts';
import { splitAtCrossings } from './split.ts';
import { stitch } from './stitch.ts';

/** A parallel that is nearer than the distance by no more than this (mm) is not too near: rounding at 1 m. */
const TOO_NEAR = 1e-7;

/**
 * The parallel curves of loops at `distance` mm: to their left in the direction they run, to their right where it is negative. For an
 * anticlockwise ring (y up), left is inwards.
 *
 * The result is all points at exactly that distance from the loops on that side: exact lines and arcs, trimmed where the parallel
 * would cross itself. A parallel may come apart into several rings, or vanish, and then there is no loop. Rings keep the direction of
 * the loops that they come from. At a corner whose outside lies on that side, the parallel is an arc about the corner (`round`), or
 * both sides run on along their line or circle to where they meet (`sharp`; rounded where they do not meet within four distances).
 * Loops must not cross themselves or one another. A distance of 0 returns the loops.
 *
 * Method: draw every parallel, split all of them where they cross, keep the parts that no loop comes nearer to than the distance, and
 * join these (after Tiller and Hanson 1984, *Offsets of two-dimensional profiles*, with a test of distance in place of a test
 * of direction; formula G1). Exact to rounding, 1e-9 mm at 1 m; n log n in the number of curves, where these lie apart.
 *
 * @throws RangeError for a distance that is not finite.
 * @example offsetLoops([rectangle({ x0: 0, y0: 0, x1: 10, y1: 6 })], 2) // one ring, 6 by 2
 */
export function offsetLoops(loops: readonly Loop[], distance: number, join: Join = 'round'): Loop[] {
  if (!Number.isFinite(distance)) throw new RangeError(`an offset of ${distance}`);
  if (distance === 0) return [...loops];
  const curves = loops.flatMap((loop) => loop.curves);
  const parallels = loops.flatMap((loop) => drawParallels(loop, distance, join));
  const isFree = freeOf(curves, Math.abs(distance) - TOO_NEAR);
  const limits = [...endCircles(loops, Math.abs(distance)), ...otherSides(loops, distance)];
  return stitch(splitAtCrossings(parallels, limits).filter(isFree));
}

/**
 * The parallels on the other side of the loops: a parallel of one loop may come as near to that side of another, or of an open one. The
 * points to the left of a single ring have nothing but its left side to come near to.
 */
function otherSides(loops: readonly Loop[], distance: number): Curve[] {
  if (loops.length === 1 && loops[0]!.closed) return [];
  return loops.flatMap((loop) => drawParallels(loop, -distance, 'round'));
}

/** The circle of radius `distance` about each end of an open loop, as two arcs: no parallel may enter it. */
function endCircles(loops: readonly Loop[], distance: number): Curve[] {
  return loops
    .filter(({ closed, curves }) => !closed && curves.length > 0)
    .flatMap(({ curves }) => [[curves[0]!.x0, curves[0]!.y0] as const, [curves.at(-1)!.x1, curves.at(-1)!.y1] as const])
    .flatMap(([x, y]) => [
      arc(x - distance, y, x + distance, y, x, y, 1),
      arc(x + distance, y, x - distance, y, x, y, 1),
    ]);
}

/** Returns a test: whether no curve comes nearer than `least` mm to the middle of a part. */
function freeOf(curves: readonly Curve[], least: number): (part: Curve) => boolean {
  const tree = new BoxTree(curves.map(curveBox));
  return (part) => {
    const { x, y } = pointAlong(part, 0.5, arcAngle(part));
    const near: Box = { x0: x - least, y0: y - least, x1: x + least, y1: y + least };
    return !tree.search(near, (id) => distanceTo(curves[id]!, x, y) < least);
  };
}
