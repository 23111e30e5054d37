import type { Curve } from './curve.ts';
import { ARC_END, SAME_LENGTH } from './tolerance.ts';

/**
 * A curve with one height at every x, running left to right: a line, or an arc within the upper or the lower half of its circle.
 *
 * x0 < x1 always, so an arc's `turn` is -1 (clockwise) on the upper half of its circle and +1 on the lower.
 */
export type Piece = Curve;

/** Least height of a piece, mm. */
export function lowOf(p: Piece): number {
  return p.turn > 0 && p.x0 < p.cx && p.cx < p.x1 ? p.cy - p.r : Math.min(p.y0, p.y1);
}

/** Greatest height of a piece, mm. */
export function highOf(p: Piece): number {
  return p.turn < 0 && p.x0 < p.cx && p.cx < p.x1 ? p.cy + p.r : Math.max(p.y0, p.y1);
}

/**
 * Height of a piece at x, mm; beyond its ends the height of the nearer end.
 *
 * Exact to rounding at the size of the piece, however large the radius: an arc's height is computed as a step from its left end,
 * a difference of squares over a sum, so that no large numbers cancel.
 */
export function heightAt(p: Piece, x: number): number {
  if (x <= p.x0) return p.y0;
  if (x >= p.x1) return p.y1;
  const dx = x - p.x0;
  if (p.turn === 0) return p.y0 + ((p.y1 - p.y0) * dx) / (p.x1 - p.x0);
  // On the arc's own side of its centre: rounding may put an end that starts upright a hair on the other one.
  const above = -p.turn * Math.abs(p.y0 - p.cy);
  const less = dx * (2 * (p.x0 - p.cx) + dx);
  const square = above * above - less;
  if (!(square > 0)) return p.cy;
  return p.y0 - less / (above - p.turn * Math.sqrt(square));
}

/** Whether a curve is a piece as it is: it runs left to right, within one half of its circle if it is an arc. Most curves are, and are not copied. */
export function isPiece(c: Curve): boolean {
  if (!(c.x0 < c.x1)) return false;
  if (c.turn === 0) return true;
  return c.turn < 0 ? c.y0 > c.cy && c.y1 > c.cy : c.y0 < c.cy && c.y1 < c.cy;
}

/**
 * Splits a curve into pieces and appends them to `out`: one for a line, up to three for an arc, in clockwise order. An upright line
 * gives none: it has no width, and the pieces to its left and right already hold the heights of its ends.
 */
export function splitCurve(c: Curve, out: Piece[]): void {
  if (isPiece(c)) {
    out.push(c);
    return;
  }
  if (c.turn === 0) {
    addPiece(out, c, c.x1, c.y1, c.x0, c.y0, 0);
    return;
  }
  // Follow the arc clockwise, whichever way it runs: rightwards along the upper half, leftwards along the lower.
  const clockwise = c.turn < 0;
  let x = clockwise ? c.x0 : c.x1;
  let y = clockwise ? c.y0 : c.y1;
  const endX = clockwise ? c.x1 : c.x0;
  const endY = clockwise ? c.y1 : c.y0;
  const endHalf = halfOf(c, endX, endY, false);
  let half = halfOf(c, x, y, true);
  for (let leg = 0; leg < 3; leg++) {
    // Does the arc end on this half, or run on to where the next half begins?
    const arrives = half === endHalf && half * (x - endX) <= ARC_END;
    const stopX = arrives ? endX : c.cx + half * c.r;
    const stopY = arrives ? endY : c.cy;
    if (half > 0) addPiece(out, c, x, y, stopX, stopY, -1);
    else addPiece(out, c, stopX, stopY, x, y, 1);
    if (arrives) return;
    x = stopX;
    y = stopY;
    half = half > 0 ? -1 : 1;
  }
}

/**
 * The half of its circle that a point lies on: +1 the upper, -1 the lower. A point level with the centre, within 1e-9 mm, counts
 * with the half that clockwise travel enters there, or leaves there: rounding alone decides on which side the end of a quarter
 * circle lies.
 */
function halfOf(c: Curve, x: number, y: number, entering: boolean): -1 | 1 {
  if (y > c.cy + SAME_LENGTH) return 1;
  if (y < c.cy - SAME_LENGTH) return -1;
  return x < c.cx === entering ? 1 : -1;
}

/** Appends the piece of a curve from one point to another, if the second lies to the right of the first. */
function addPiece(out: Piece[], c: Curve, x0: number, y0: number, x1: number, y1: number, turn: -1 | 0 | 1): void {
  if (x0 < x1) out.push({ x0, y0, x1, y1, cx: c.cx, cy: c.cy, r: c.r, turn });
}
