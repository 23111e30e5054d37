import { arc, type Loop } from '@fielded/geometry';

/** A full circle about the origin, as two halves that begin at the right. */
export function circle(r: number): Loop {
  return { curves: [arc(r, 0, -r, 0, 0, 0, 1), arc(-r, 0, r, 0, 0, 0, 1)], closed: true };
}

/** A full circle about (x, y), as two halves that begin at the left. */
export function ring(x: number, y: number, r: number): Loop {
  return { curves: [arc(x - r, y, x + r, y, x, y, 1), arc(x + r, y, x - r, y, x, y, 1)], closed: true };
}
