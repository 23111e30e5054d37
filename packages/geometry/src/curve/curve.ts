/**
 * A straight line or a circular arc from (x0, y0) to (x1, y1), millimetres.
 *
 * `turn` is 0 for a line, +1 for an anticlockwise arc (y up), -1 for a clockwise one. An arc has its centre at (cx, cy) and
 * radius r > 0, and is less than a full circle. A line has cx = cy = r = 0. Lines and arcs share one shape of object, which
 * keeps the engine's inner loops fast.
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

/** Curves joined end to start: each starts where the one before it ends. */
export type Chain = readonly Curve[];

/** A straight line between two points, mm. */
export function line(x0: number, y0: number, x1: number, y1: number): Curve {
  return { x0, y0, x1, y1, cx: 0, cy: 0, r: 0, turn: 0 };
}

/**
 * The arc about (cx, cy) from (x0, y0) to (x1, y1), mm; `turn` +1 is anticlockwise with y up. The radius is the distance from the
 * centre to the start: the end is taken to lie on the same circle, which is not checked.
 */
export function arc(x0: number, y0: number, x1: number, y1: number, cx: number, cy: number, turn: -1 | 1): Curve {
  return { x0, y0, x1, y1, cx, cy, r: Math.hypot(x0 - cx, y0 - cy), turn };
}

/**
 * The same line or circle between other ends, mm, which are taken to lie on it. A copy by spread would have another shape of object than
 * all other curves, and everything that reads curves would be slower for it.
 */
export function withEnds(c: Curve, x0: number, y0: number, x1: number, y1: number): Curve {
  return { x0, y0, x1, y1, cx: c.cx, cy: c.cy, r: c.r, turn: c.turn };
}

/** The curve moved by (dx, dy) mm. */
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

/** The curve rotated about the origin, anticlockwise with y up, by the angle with this cosine and sine. */
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

/**
 * The same curve in the opposite direction.
 *
 * A line's turn becomes −0, here and where a curve is flipped. It counts as 0; with `0 - turn` in its place, which gives no −0, joints
 * took half as long again once jobs of many kinds had run.
 */
export function reverseCurve(c: Curve): Curve {
  return { x0: c.x1, y0: c.y1, x1: c.x0, y1: c.y0, cx: c.cx, cy: c.cy, r: c.r, turn: -c.turn as -1 | 0 | 1 };
}

/** The curve mirrored so that y becomes `sum` − y: depths below a face at height `sum` become heights, and heights depths. */
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

/** The curve mirrored so that x becomes `sum` − x. */
export function mirrorCurve(c: Curve, sum: number): Curve {
  return {
    x0: sum - c.x0,
    y0: c.y0,
    x1: sum - c.x1,
    y1: c.y1,
    cx: c.turn === 0 ? 0 : sum - c.cx,
    cy: c.cy,
    r: c.r,
    turn: -c.turn as -1 | 0 | 1,
  };
}
