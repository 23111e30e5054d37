import type { Curve } from './curve.ts';
import type { Point } from './point.ts';

/** A direction (dx, dy), of any length above 0. */
export interface Direction {
  readonly dx: number;
  readonly dy: number;
}

/** A point of a curve, mm, and the tangent there in the direction of travel. */
export interface Heading extends Point, Direction {}

/** The end of a curve and the tangent there. */
export function headingAtEnd(c: Curve): Heading {
  if (c.turn === 0) return { x: c.x1, y: c.y1, dx: c.x1 - c.x0, dy: c.y1 - c.y0 };
  return { x: c.x1, y: c.y1, dx: -c.turn * (c.y1 - c.cy), dy: c.turn * (c.x1 - c.cx) };
}

/** The angle from one direction to another, radians, −π to π: positive to the left. */
export function turnBetween(from: Direction, to: Direction): number {
  return Math.atan2(from.dx * to.dy - from.dy * to.dx, from.dx * to.dx + from.dy * to.dy);
}
