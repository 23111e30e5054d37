import { type Chain, type Curve, isPiece, splitAtExtremes } from '@fielded/geometry';

/**
 * How far in from the panel's edge a sweep leaves the worked face, mm: the greatest `x` at which it still takes wood (formula 12);
 * null where it takes none.
 *
 * `swept` is in cut coordinates, y the depth below the worked face of the stock as measured. A profile set less deep than it is drawn
 * leaves the face before the end of its reach, one that ends in an upright shoulder at the end of its reach. Exact to rounding.
 */
export function faceEnd(swept: Chain): number | null {
  let end = Number.NEGATIVE_INFINITY;
  // Start at the field: most curves lie nearer the edge than what is found first.
  for (let k = swept.length - 1; k >= 0; k--) {
    const c = swept[k]!;
    if (c.x1 <= end && isPiece(c)) continue;
    if (c.turn === 0 || staysInQuarter(c)) end = Math.max(end, farthestInWood(c));
    else for (const part of splitAtExtremes([c])) end = Math.max(end, farthestInWood(part));
  }
  return end === Number.NEGATIVE_INFINITY ? null : end;
}

/** Whether an arc is monotonic in x and y as it is: it runs left to right within a quarter of its circle. Most do, and are not split. */
function staysInQuarter(c: Curve): boolean {
  return isPiece(c) && (c.x0 - c.cx) * (c.x1 - c.cx) >= 0;
}

/** The greatest x at which a curve, monotonic in x and y, lies below the face, mm; -Infinity where it lies there nowhere. */
function farthestInWood(c: Curve): number {
  if (c.y0 <= 0 && c.y1 <= 0) return Number.NEGATIVE_INFINITY;
  const atStart = c.y0 > 0 ? c.x0 : Number.NEGATIVE_INFINITY;
  const atEnd = c.y1 > 0 ? c.x1 : Number.NEGATIVE_INFINITY;
  return Math.max(atStart, atEnd, c.y0 <= 0 || c.y1 <= 0 ? crossingOfFace(c) : Number.NEGATIVE_INFINITY);
}

/** The x at which a curve, monotonic in x and y, crosses the face, mm. */
function crossingOfFace(c: Curve): number {
  if (c.turn === 0) return c.x0 + ((c.x1 - c.x0) * c.y0) / (c.y0 - c.y1);
  const half = Math.sqrt(Math.max(0, c.r * c.r - c.cy * c.cy));
  const low = Math.min(c.x0, c.x1);
  const high = Math.max(c.x0, c.x1);
  const inside = (x: number) => Math.min(high, Math.max(low, x));
  // The circle crosses the face twice. The crossing on the arc is the one between its ends.
  const left = inside(c.cx - half);
  const right = inside(c.cx + half);
  return Math.abs(left - (c.cx - half)) <= Math.abs(right - (c.cx + half)) ? left : right;
}
