import type { Chain, Curve } from './curve.ts';

/** Least distance from a point to a line or an arc, mm; 0 on it. Exact to rounding. */
export function distanceTo(c: Curve, x: number, y: number): number {
  if (c.turn === 0) {
    const dx = c.x1 - c.x0;
    const dy = c.y1 - c.y0;
    const along = (x - c.x0) * dx + (y - c.y0) * dy;
    const square = dx * dx + dy * dy;
    if (along <= 0 || square === 0) return span(x - c.x0, y - c.y0);
    if (along >= square) return span(x - c.x1, y - c.y1);
    return Math.abs((x - c.x0) * dy - (y - c.y0) * dx) / Math.sqrt(square);
  }
  if (isInSector(c, x, y)) return Math.abs(span(x - c.cx, y - c.cy) - c.r);
  return Math.min(span(x - c.x0, y - c.y0), span(x - c.x1, y - c.y1));
}

/** As `Math.hypot`, in a fifth of its time: no length here is so great or so small that its square could not be written. */
function span(dx: number, dy: number): number {
  return Math.sqrt(dx * dx + dy * dy);
}

/** Whether a point lies in the sector between an arc's ends, edges included: the ray from the centre to the point then meets the arc. */
function isInSector(c: Curve, x: number, y: number): boolean {
  // From its start anticlockwise to its end, or from its end to its start.
  const isForward = c.turn > 0;
  const ax = (isForward ? c.x0 : c.x1) - c.cx;
  const ay = (isForward ? c.y0 : c.y1) - c.cy;
  const bx = (isForward ? c.x1 : c.x0) - c.cx;
  const by = (isForward ? c.y1 : c.y0) - c.cy;
  const px = x - c.cx;
  const py = y - c.cy;
  const pastFirst = ax * py - ay * px >= 0;
  const beforeLast = bx * py - by * px <= 0;
  // An arc of more than half a turn spans everything but the sector from its last end to its first.
  const wide = ax * by - ay * bx < 0;
  return wide ? pastFirst || beforeLast : pastFirst && beforeLast;
}

/** Distance from a point to the nearest of the curves, mm; Infinity where there are none. */
export function distanceToChain(chain: Chain, x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const c of chain) least = Math.min(least, distanceTo(c, x, y));
  return least;
}
