import type { Curve } from './curve.ts';
import { ARC_END, SAME_LENGTH } from './tolerance.ts';

/**
 * A curve with one height at every x: a line, or an arc within the upper or the lower half of its circle, run left to right.
 *
 * x0 < x1 always, so `turn` is -1 (clockwise) on the upper half and +1 on the lower.
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
 * An arc's height is computed from its left end, as a difference of squares over a sum, so that it is good to rounding at the size
 * of the piece however large the radius.
 */
export function heightAt(p: Piece, x: number): number {
  if (x <= p.x0) return p.y0;
  if (x >= p.x1) return p.y1;
  const dx = x - p.x0;
  if (p.turn === 0) return p.y0 + ((p.y1 - p.y0) * dx) / (p.x1 - p.x0);
  const above = p.y0 - p.cy;
  const less = dx * (2 * (p.x0 - p.cx) + dx);
  const square = above * above - less;
  if (!(square > 0)) return p.cy;
  return p.y0 - less / (above - p.turn * Math.sqrt(square));
}

/** Whether a curve is a piece as it stands, run left to right on one half of its circle: the usual case, which then costs nothing. */
export function isPiece(c: Curve): boolean {
  if (!(c.x0 < c.x1)) return false;
  if (c.turn === 0) return true;
  return c.turn < 0 ? c.y0 > c.cy && c.y1 > c.cy : c.y0 < c.cy && c.y1 < c.cy;
}

/**
 * Cuts a curve into pieces, one for a line, up to three for an arc, appended to `out` in clockwise order. Upright lines give none: they
 * have no width, and the strips on either side of them know the step.
 */
export function splitCurve(c: Curve, out: Piece[]): void {
  if (isPiece(c)) {
    out.push(c);
    return;
  }
  if (c.turn === 0) {
    if (c.x1 < c.x0) out.push(pieceOf(c, c.x1, c.y1, c.x0, c.y0, 0));
    return;
  }
  // Take every arc clockwise: rightwards along the upper half, leftwards along the lower.
  const clockwise = c.turn < 0;
  let x = clockwise ? c.x0 : c.x1;
  let y = clockwise ? c.y0 : c.y1;
  const endX = clockwise ? c.x1 : c.x0;
  const endY = clockwise ? c.y1 : c.y0;
  const endHalf = halfOf(c, endX, endY, false);
  let half = halfOf(c, x, y, true);
  for (let leg = 0; leg < 3; leg++) {
    const arrives = half === endHalf && half * (x - endX) <= ARC_END;
    const stopX = arrives ? endX : c.cx + half * c.r;
    const stopY = arrives ? endY : c.cy;
    if (half > 0 && x < stopX) out.push(pieceOf(c, x, y, stopX, stopY, -1));
    else if (half < 0 && stopX < x) out.push(pieceOf(c, stopX, stopY, x, y, 1));
    if (arrives) return;
    x = stopX;
    y = stopY;
    half = half > 0 ? -1 : 1;
  }
}

/**
 * Upper half +1, lower half -1; a point level with the centre counts with the half that clockwise travel enters, or leaves,
 * there. Level is within 1e-9 mm: the end of a quarter circle lies on the one side or the other by rounding only.
 */
function halfOf(c: Curve, x: number, y: number, entering: boolean): -1 | 1 {
  if (y > c.cy + SAME_LENGTH) return 1;
  if (y < c.cy - SAME_LENGTH) return -1;
  return x < c.cx === entering ? 1 : -1;
}

function pieceOf(c: Curve, x0: number, y0: number, x1: number, y1: number, turn: -1 | 0 | 1): Piece {
  return { x0, y0, x1, y1, cx: c.cx, cy: c.cy, r: c.r, turn };
}
