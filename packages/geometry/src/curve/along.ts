import { type Chain, type Curve, withEnds } from './curve.ts';
import { type Heading, turnBetween } from './heading.ts';
import type { Point } from './point.ts';

/** Two curves that meet at a smaller angle than this (radians, 0.1°) count as smooth: a drawn outline is rounded by as much. */
export const SMOOTH_JOINT: number = 0.1 * (Math.PI / 180);

/**
 * The point at the fraction `u` (0 to 1) of a curve's length, mm, and the tangent there; the tangent is as long as the curve.
 *
 * Both ends are exact, points between them are exact to rounding. `angle` is the curve's `arcAngle`: it is the same at every u
 * and expensive, so the caller computes it once.
 *
 * @example pointAlong(line(0, 0, 10, 0), 0.3, 0) // { x: 3, y: 0, dx: 10, dy: 0 }
 */
export function pointAlong(c: Curve, u: number, angle: number): Heading {
  if (c.turn === 0) {
    const dx = c.x1 - c.x0;
    const dy = c.y1 - c.y0;
    return u === 1 ? { x: c.x1, y: c.y1, dx, dy } : { x: c.x0 + u * dx, y: c.y0 + u * dy, dx, dy };
  }
  const turned = c.turn * angle * u;
  const cos = Math.cos(turned);
  const sin = Math.sin(turned);
  const px = (c.x0 - c.cx) * cos - (c.y0 - c.cy) * sin;
  const py = (c.x0 - c.cx) * sin + (c.y0 - c.cy) * cos;
  const dx = -c.turn * angle * py;
  const dy = c.turn * angle * px;
  if (u === 0) return { x: c.x0, y: c.y0, dx, dy };
  return u === 1 ? { x: c.x1, y: c.y1, dx, dy } : { x: c.cx + px, y: c.cy + py, dx, dy };
}

/** The angle that an arc turns through, radians, 0 < angle < 2π; 0 for a line. */
export function arcAngle(c: Curve): number {
  if (c.turn === 0) return 0;
  const from = Math.atan2(c.y0 - c.cy, c.x0 - c.cx);
  const to = Math.atan2(c.y1 - c.cy, c.x1 - c.cx);
  const angle = c.turn * (to - from);
  return angle > 0 ? angle : angle + 2 * Math.PI;
}

/** The polar angle of an arc's start about its centre, and the angle it sweeps, radians; the sweep is positive anticlockwise. Both are 0 for a line. */
export function arcAngles(c: Curve): { readonly from: number; readonly sweep: number } {
  if (c.turn === 0) return { from: 0, sweep: 0 };
  return { from: Math.atan2(c.y0 - c.cy, c.x0 - c.cx), sweep: c.turn * arcAngle(c) };
}

/** The angles `offset` + k·π/2 that an arc from angle `from` through `sweep` passes strictly inside, in the order it passes them, radians. */
export function quarterAngles(from: number, sweep: number, offset: number): number[] {
  const quarter = Math.PI / 2;
  const found: number[] = [];
  const step = sweep < 0 ? -1 : 1;
  const first = (from - offset) / quarter;
  const last = (from + sweep - offset) / quarter;
  for (let k = step > 0 ? Math.floor(first) + 1 : Math.ceil(first) - 1; (last - k) * step > 0; k += step) {
    found.push(k * quarter + offset);
  }
  return found;
}

/** The point at the fraction `at` (0 to 1) of a curve's length, mm. See `pointAlong`. */
export function pointAt(c: Curve, at: number): Point {
  return pointAlong(c, at, arcAngle(c));
}

/** Length of a curve, mm. */
export function curveLength(c: Curve): number {
  return c.turn === 0 ? Math.hypot(c.x1 - c.x0, c.y1 - c.y0) : c.r * arcAngle(c);
}

/** The angle between the tangent at one curve's end and the tangent at the next one's start, radians, 0 to π. */
export function cornerAngle(before: Curve, after: Curve): number {
  return Math.abs(turnBetween(pointAlong(before, 1, arcAngle(before)), pointAlong(after, 0, arcAngle(after))));
}

/** Splits arcs where their tangent is level or upright, so that x and y are monotonic along every curve. The points of the split are exact. */
export function splitAtExtremes(chain: Chain): Curve[] {
  const out: Curve[] = [];
  for (const c of chain) {
    if (c.turn === 0) {
      out.push(c);
      continue;
    }
    const total = arcAngle(c);
    const start = Math.atan2(c.y0 - c.cy, c.x0 - c.cx);
    // Which multiples of a quarter turn does the arc pass after its start?
    const quarter = Math.PI / 2;
    const first = c.turn > 0 ? Math.floor(start / quarter) + 1 : Math.ceil(start / quarter) - 1;
    let { x0, y0 } = c;
    for (let k = first; c.turn * (k * quarter - start) < total - 1e-12; k += c.turn) {
      // The start is no place to split at.
      if (c.turn * (k * quarter - start) < 1e-12) continue;
      // The point lies right of (0), above (1), left of (2) or below (3) the centre.
      const compass = ((k % 4) + 4) % 4;
      const x1 = compass === 0 ? c.cx + c.r : compass === 2 ? c.cx - c.r : c.cx;
      const y1 = compass === 1 ? c.cy + c.r : compass === 3 ? c.cy - c.r : c.cy;
      out.push(withEnds(c, x0, y0, x1, y1));
      [x0, y0] = [x1, y1];
    }
    out.push(withEnds(c, x0, y0, c.x1, c.y1));
  }
  return out;
}
