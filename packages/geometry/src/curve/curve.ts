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

/** A straight line between two points, mm. */
export function line(x0: number, y0: number, x1: number, y1: number): Curve {
  return { x0, y0, x1, y1, cx: 0, cy: 0, r: 0, turn: 0 };
}

/** The arc about (cx, cy) from (x0, y0) to (x1, y1), mm; `turn` +1 runs anticlockwise with y up. The radius is taken from the start. */
export function arc(x0: number, y0: number, x1: number, y1: number, cx: number, cy: number, turn: -1 | 1): Curve {
  return { x0, y0, x1, y1, cx, cy, r: Math.hypot(x0 - cx, y0 - cy), turn };
}

/** The curve moved by (dx, dy). */
export function shiftCurve(c: Curve, dx: number, dy: number): Curve {
  const bent = c.turn !== 0;
  return {
    x0: c.x0 + dx,
    y0: c.y0 + dy,
    x1: c.x1 + dx,
    y1: c.y1 + dy,
    cx: bent ? c.cx + dx : 0,
    cy: bent ? c.cy + dy : 0,
    r: c.r,
    turn: c.turn,
  };
}

/** The curve turned about the origin by the angle whose cosine and sine are given, anticlockwise with y up. */
export function turnCurve(c: Curve, cos: number, sin: number): Curve {
  return {
    x0: c.x0 * cos - c.y0 * sin,
    y0: c.x0 * sin + c.y0 * cos,
    x1: c.x1 * cos - c.y1 * sin,
    y1: c.x1 * sin + c.y1 * cos,
    cx: c.cx * cos - c.cy * sin,
    cy: c.cx * sin + c.cy * cos,
    r: c.r,
    turn: c.turn,
  };
}

/** The same curve run backwards. */
export function reverseCurve(c: Curve): Curve {
  return { ...c, x0: c.x1, y0: c.y1, x1: c.x0, y1: c.y0, turn: -c.turn as -1 | 0 | 1 };
}

/** The curve mirrored so that y becomes `sum - y`: from depth below a face to height, and back. */
export function flipCurve(c: Curve, sum: number): Curve {
  return {
    x0: c.x0,
    y0: sum - c.y0,
    x1: c.x1,
    y1: sum - c.y1,
    cx: c.cx,
    cy: c.turn === 0 ? 0 : sum - c.cy,
    r: c.r,
    turn: -c.turn as -1 | 0 | 1,
  };
}
