import type { Chain, Curve } from './curve.ts';
import type { Heading } from './heading.ts';
import type { Point } from './point.ts';

/** Curves that meet at less than this (radians, 0.1°) run on smoothly: the rounding of a drawn outline, not a corner. */
export const SMOOTH_JOINT: number = 0.1 * (Math.PI / 180);

/**
 * The point a share `u` (0 to 1) of the way along a curve, and its heading, mm; the heading is as long as the curve.
 *
 * The ends are exact. `angle` is the curve's `arcAngle`: it is expensive and the same at every u, so the caller computes it once.
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

/** Angle an arc turns through, radians, 0 < angle < 2π; 0 for a line. */
export function arcAngle(c: Curve): number {
  if (c.turn === 0) return 0;
  const from = Math.atan2(c.y0 - c.cy, c.x0 - c.cx);
  const to = Math.atan2(c.y1 - c.cy, c.x1 - c.cx);
  const angle = c.turn * (to - from);
  return angle > 0 ? angle : angle + 2 * Math.PI;
}

/** The angle at which an arc starts, and how far it turns: positive with growing angle, less than a full turn; both 0 for a line. */
export function arcAngles(c: Curve): { readonly from: number; readonly sweep: number } {
  if (c.turn === 0) return { from: 0, sweep: 0 };
  return { from: Math.atan2(c.y0 - c.cy, c.x0 - c.cx), sweep: c.turn * arcAngle(c) };
}

/** The angles, in the order they are run through, at which the arc passes a multiple of a quarter turn plus `offset`. */
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

/** The point at the fraction `at` (0 to 1) of a curve's length. */
export function pointAt(c: Curve, at: number): Point {
  return pointAlong(c, at, arcAngle(c));
}

/** Length of a curve, mm. */
export function curveLength(c: Curve): number {
  return c.turn === 0 ? Math.hypot(c.x1 - c.x0, c.y1 - c.y0) : c.r * arcAngle(c);
}

/** Angle between a curve's end and the next one's start, radians, 0 where they run on smoothly. */
export function cornerAngle(before: Curve, after: Curve): number {
  const a = pointAlong(before, 1, arcAngle(before));
  const b = pointAlong(after, 0, arcAngle(after));
  return Math.abs(Math.atan2(a.dx * b.dy - a.dy * b.dx, a.dx * b.dx + a.dy * b.dy));
}

/** Cuts arcs where they are level or upright, so that along each curve x and y only grow or only shrink. */
export function splitAtExtremes(chain: Chain): Curve[] {
  const out: Curve[] = [];
  for (const c of chain) {
    if (c.turn === 0) {
      out.push(c);
      continue;
    }
    const total = arcAngle(c);
    const start = Math.atan2(c.y0 - c.cy, c.x0 - c.cx);
    // The multiples of a quarter turn that the arc passes, from its start on.
    const quarter = Math.PI / 2;
    const first = c.turn > 0 ? Math.floor(start / quarter) + 1 : Math.ceil(start / quarter) - 1;
    let { x0, y0 } = c;
    for (let k = first; c.turn * (k * quarter - start) < total - 1e-12; k += c.turn) {
      // The start itself is no cut.
      if (c.turn * (k * quarter - start) < 1e-12) continue;
      // 0 right, 1 up, 2 left, 3 down of the centre: these points are exact.
      const compass = ((k % 4) + 4) % 4;
      const x1 = compass === 0 ? c.cx + c.r : compass === 2 ? c.cx - c.r : c.cx;
      const y1 = compass === 1 ? c.cy + c.r : compass === 3 ? c.cy - c.r : c.cy;
      out.push({ ...c, x0, y0, x1, y1 });
      [x0, y0] = [x1, y1];
    }
    out.push({ ...c, x0, y0 });
  }
  return out;
}
