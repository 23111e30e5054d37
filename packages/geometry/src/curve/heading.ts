import type { Curve } from './curve.ts';

/** A point of a curve and the direction it is passed in, mm; the direction has any length but none. */
export interface Heading {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
}

/** Where a curve ends and which way it then heads. */
export function headingAtEnd(c: Curve): Heading {
  if (c.turn === 0) return { x: c.x1, y: c.y1, dx: c.x1 - c.x0, dy: c.y1 - c.y0 };
  return { x: c.x1, y: c.y1, dx: -c.turn * (c.y1 - c.cy), dy: c.turn * (c.x1 - c.cx) };
}
