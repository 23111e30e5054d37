import { type Chain, type Curve, splitAtExtremes } from '@fielded/geometry';

/**
 * How far in from the panel's edge a sweep leaves the worked face, mm: the greatest `x` at which it still takes wood (formula 12);
 * null where it takes none.
 *
 * `swept` in cut coordinates, y being the depth below the worked face of the stock as it is. A profile that is set less
 * deep than it is drawn leaves the face before its reach ends; one that ends in an upright shoulder leaves it at its
 * reach. Exact for lines and arcs.
 */
export function faceEnd(swept: Chain): number | null {
  let end = Number.NEGATIVE_INFINITY;
  for (const c of splitAtExtremes(swept)) {
    if (c.y0 <= 0 && c.y1 <= 0) continue;
    if (c.y0 > 0) end = Math.max(end, c.x0);
    if (c.y1 > 0) end = Math.max(end, c.x1);
    if (c.y0 <= 0 || c.y1 <= 0) end = Math.max(end, crossingOfFace(c));
  }
  return end === Number.NEGATIVE_INFINITY ? null : end;
}

/** Where a piece that runs one way in x and y crosses the face. */
function crossingOfFace(c: Curve): number {
  if (c.turn === 0) return c.x0 + ((c.x1 - c.x0) * c.y0) / (c.y0 - c.y1);
  const half = Math.sqrt(Math.max(0, c.r * c.r - c.cy * c.cy));
  const [low, high] = c.x0 < c.x1 ? [c.x0, c.x1] : [c.x1, c.x0];
  const inside = [c.cx - half, c.cx + half].map((x) => Math.min(high, Math.max(low, x)));
  // Of the circle's two crossings the piece has the one that it need not be bent to.
  return Math.abs(inside[0]! - (c.cx - half)) <= Math.abs(inside[1]! - (c.cx + half)) ? inside[0]! : inside[1]!;
}
