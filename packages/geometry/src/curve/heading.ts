import type { Curve } from './curve.ts';

/** A point of a curve, mm, and the tangent (dx, dy) there in the direction of travel; the tangent may have any length above 0. */
export interface Heading {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
}

/** The end of a curve and the tangent there. */
export function headingAtEnd(c: Curve): Heading {
  if (c.turn === 0) return { x: c.x1, y: c.y1, dx: c.x1 - c.x0, dy: c.y1 - c.y0 };
  return { x: c.x1, y: c.y1, dx: -c.turn * (c.y1 - c.cy), dy: c.turn * (c.x1 - c.cx) };
}
