import { arcAngle, type Chain, type Curve, pointAlong, splitAtExtremes } from '@fielded/geometry';

/** The greatest x of a chain at a depth, mm. */
export function reachAt(chain: Chain, depth: number): number {
  let farthest = 0;
  for (const c of splitAtExtremes(chain))
    if ((c.y0 - depth) * (c.y1 - depth) <= 0) farthest = Math.max(farthest, placeAt(c, depth));
  return farthest;
}

/** The x at which a monotonic curve passes a depth, mm, by bisection. */
function placeAt(c: Curve, depth: number): number {
  const angle = arcAngle(c);
  let [from, to] = [0, 1];
  for (let i = 0; i < 40; i++) {
    const middle = (from + to) / 2;
    if (pointAlong(c, middle, angle).y > depth === c.y0 > depth) from = middle;
    else to = middle;
  }
  return pointAlong(c, (from + to) / 2, angle).x;
}
