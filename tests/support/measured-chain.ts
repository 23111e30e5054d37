// Chains of lines and arcs measured by the angles that points have about a centre, apart from what geometry does itself.
import type { Chain, Curve } from '@fielded/geometry';
import type { XY } from './drawn-curves.ts';

/** Distance from a point to a line or an arc: to its carrier where its foot lies between the ends, else to an end. */
function away(c: Curve, [x, y]: XY): number {
  const ends = Math.min(Math.hypot(x - c.x0, y - c.y0), Math.hypot(x - c.x1, y - c.y1));
  if (c.turn === 0) {
    const [dx, dy] = [c.x1 - c.x0, c.y1 - c.y0];
    const share = ((x - c.x0) * dx + (y - c.y0) * dy) / (dx * dx + dy * dy);
    return share < 0 || share > 1 ? ends : Math.abs((x - c.x0) * dy - (y - c.y0) * dx) / Math.hypot(dx, dy);
  }
  return turned(c, x, y) <= turned(c, c.x1, c.y1) ? Math.abs(Math.hypot(x - c.cx, y - c.cy) - c.r) : ends;
}

/** The distance from a chain to that of the points that is farthest from it. */
export function farthest(points: readonly XY[], chain: Chain): number {
  return points.reduce(
    (most, p) =>
      Math.max(
        most,
        chain.reduce((least, c) => Math.min(least, away(c, p)), Infinity),
      ),
    0,
  );
}

/** The unit direction of a curve at its start or end. */
export function direction(c: Curve, end: 0 | 1): XY {
  if (c.turn === 0) {
    const length = Math.hypot(c.x1 - c.x0, c.y1 - c.y0);
    return [(c.x1 - c.x0) / length, (c.y1 - c.y0) / length];
  }
  const [x, y] = end === 0 ? [c.x0, c.y0] : [c.x1, c.y1];
  return [(-c.turn * (y - c.cy)) / c.r, (c.turn * (x - c.cx)) / c.r];
}

/** The angle between two directions, radians. */
export function between([ax, ay]: XY, [bx, by]: XY): number {
  return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
}

/** The length of curves, each arc by the angle that its ends have about its centre. */
export function lengthOf(chain: Chain): number {
  return chain.reduce(
    (sum, c) => sum + (c.turn === 0 ? Math.hypot(c.x1 - c.x0, c.y1 - c.y0) : c.r * turned(c, c.x1, c.y1)),
    0,
  );
}

/** The angle from an arc's start to a point, the way that it turns: 0 to 2π. */
function turned(c: Curve, x: number, y: number): number {
  const angle = c.turn * (Math.atan2(y - c.cy, x - c.cx) - Math.atan2(c.y0 - c.cy, c.x0 - c.cx));
  return angle - 2 * Math.PI * Math.floor(angle / (2 * Math.PI));
}
