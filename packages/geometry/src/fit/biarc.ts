import { arc, type Chain, type Curve, line, reverseCurve } from '../curve/curve.ts';
import type { Heading } from '../curve/heading.ts';

/** A bend smaller than this (mm, chord to arc) is drawn as a straight line: a thousandth of what the finest fit asks for. */
const STRAIGHT = 1e-9;

/**
 * Two arcs that leave `from` and arrive at `to` in the directions given and share their tangent where they meet; one arc
 * or one line where the two are the same circle or straight.
 *
 * The joint is the one with equal tangent lengths d from both ends: with v the chord and t the sum of the unit
 * directions, d = v·v / (v·t + √((v·t)² + 2(1 − cos)·v·v)), cos that of the angle between the directions (Bolton 1975,
 * *Biarc curves*; written so that nothing cancels as the directions come together). Empty where the ends coincide, and
 * where the directions oppose each other and the chord so that no such pair exists.
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
  // |f − t|² is 2(1 − cos) without the loss of figures that 1 − cos suffers between near-parallel directions.
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

/** The arc that leaves `from` in its direction and ends where `to` is, whichever way that heads. */
export function leaveHeading(from: Heading, to: Heading): Curve {
  const length = Math.hypot(from.dx, from.dy);
  return leaveAlong(from.x, from.y, from.dx / length, from.dy / length, to.x, to.y);
}

/** The arc that leaves (x, y) along the unit direction (ux, uy) and ends at (ex, ey); a line where it hardly bends. */
function leaveAlong(x: number, y: number, ux: number, uy: number, ex: number, ey: number): Curve {
  const vx = ex - x;
  const vy = ey - y;
  const aside = ux * vy - uy * vx;
  // The end lies `aside` of the tangent, and an arc bends a quarter of that away from its chord.
  // An end straight behind asks for a circle without bound: the line there is as near as anything comes.
  if (Math.abs(aside) < 4 * STRAIGHT) return line(x, y, ex, ey);
  const offset = (vx * vx + vy * vy) / (2 * aside);
  return arc(x, y, ex, ey, x - uy * offset, y + ux * offset, aside > 0 ? 1 : -1);
}

/** Whether going on along the first curve instead of the second would be seen nowhere. */
function sameCircle(a: Curve, b: Curve): boolean {
  if (a.turn !== b.turn) return false;
  if (a.turn === 0) return true;
  const chord2 = (b.x1 - b.x0) ** 2 + (b.y1 - b.y0) ** 2;
  return Math.abs(1 / a.r - 1 / b.r) * chord2 < STRAIGHT;
}
