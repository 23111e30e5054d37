import { arc, type Chain, type Curve, line, reverseCurve } from '../curve/curve.ts';
import type { Heading } from '../curve/heading.ts';

/** An arc that lies closer to its chord than this (mm) becomes a line: a thousandth of the tolerance of the finest fit. */
const STRAIGHT = 1e-9;

/**
 * A biarc: two arcs with a common tangent where they meet, the first tangent to `from`, the second to `to`; one arc or one line where
 * that fits.
 *
 * The joint has the same tangent length d from both ends: with v the chord and t the sum of the unit directions,
 * d = v·v / (v·t + √((v·t)² + 2(1 − cos)·v·v)), cos the cosine of the angle between the directions (Bolton 1975,
 * *Biarc curves*; written so that nothing cancels for directions that are nearly the same). Empty where the ends coincide, and where
 * the directions oppose each other and the chord so that there is no such pair.
 *
 * @example joinTangents({ x: 0, y: 0, dx: 1, dy: 0 }, { x: 10, y: 10, dx: 0, dy: 1 }) // a quarter circle of radius 10
 */
export function joinTangents(from: Heading, to: Heading): Chain {
  const vx = to.x - from.x;
  const vy = to.y - from.y;
  const vv = vx * vx + vy * vy;
  if (vv < STRAIGHT * STRAIGHT) return [];
  const fromLength = Math.hypot(from.dx, from.dy);
  const toLength = Math.hypot(to.dx, to.dy);
  const fx = from.dx / fromLength;
  const fy = from.dy / fromLength;
  const tx = to.dx / toLength;
  const ty = to.dy / toLength;
  const vt = vx * (fx + tx) + vy * (fy + ty);
  // |f − t|² is 2(1 − cos); the subtraction 1 − cos would lose digits between nearly parallel directions.
  const spread = (fx - tx) ** 2 + (fy - ty) ** 2;
  const reach = vt + Math.sqrt(vt * vt + spread * vv);
  if (!(reach > 0)) return [];
  const d = vv / reach;
  const jx = (from.x + to.x + d * (fx - tx)) / 2;
  const jy = (from.y + to.y + d * (fy - ty)) / 2;
  const first = leaveAlong(from.x, from.y, fx, fy, jx, jy);
  const second = reverseCurve(leaveAlong(to.x, to.y, -tx, -ty, jx, jy));
  return sameCircle(first, second) ? [leaveAlong(from.x, from.y, fx, fy, to.x, to.y)] : [first, second];
}

/** The arc that is tangent to `from` and ends at the point of `to`; the direction of `to` does not matter. */
export function leaveHeading(from: Heading, to: Heading): Curve {
  const length = Math.hypot(from.dx, from.dy);
  return leaveAlong(from.x, from.y, from.dx / length, from.dy / length, to.x, to.y);
}

/** The arc that leaves (x, y) in the unit direction (ux, uy) and ends at (ex, ey); a line where it bends by less than `STRAIGHT`. */
function leaveAlong(x: number, y: number, ux: number, uy: number, ex: number, ey: number): Curve {
  const vx = ex - x;
  const vy = ey - y;
  const aside = ux * vy - uy * vx;
  // The end lies `aside` mm off the tangent, and the arc a quarter of that off its chord.
  // Does the end lie straight behind? The circle would have no bound: a line comes as near as anything.
  if (Math.abs(aside) < 4 * STRAIGHT) return line(x, y, ex, ey);
  const offset = (vx * vx + vy * vy) / (2 * aside);
  return arc(x, y, ex, ey, x - uy * offset, y + ux * offset, aside > 0 ? 1 : -1);
}

/** Whether two curves lie on one line or on circles that differ by less than `STRAIGHT` along the second. */
function sameCircle(a: Curve, b: Curve): boolean {
  if (a.turn !== b.turn) return false;
  if (a.turn === 0) return true;
  const chord2 = (b.x1 - b.x0) ** 2 + (b.y1 - b.y0) ** 2;
  return Math.abs(1 / a.r - 1 / b.r) * chord2 < STRAIGHT;
}
