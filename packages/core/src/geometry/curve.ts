/**
 * A straight line or a circular arc from (x0, y0) to (x1, y1), millimetres.
 *
 * `turn` is 0 for a line, +1 for an arc run anticlockwise (y up), -1 for one run clockwise; an arc has its centre at
 * (cx, cy) and radius r, and is less than a full circle. A line has cx = cy = r = 0. One shape for both keeps the
 * engine's inner loops fast.
 */
export interface Curve {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  readonly cx: number;
  readonly cy: number;
  readonly r: number;
  readonly turn: -1 | 0 | 1;
}

/** Curves joined end to start. */
export type Chain = readonly Curve[];
