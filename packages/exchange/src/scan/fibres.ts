import type { Point } from '@fielded/geometry';

/** A fibre or a chip that leaves the outline and comes back within this, mm, is not of it … */
const FIBRE_GAP = 0.6;
/** … where the way out and back is this many times longer than the gap. */
const FIBRE_WAY = 2.6;

/** The way in and back out, mm, of the deepest crack that is left out: one that is left out in part would leave a stub. */
const FURTHEST = 44;

/** An outline without excursions: fibres that stand out and chips that are torn in, narrow and tall. */
export function dropFibres(points: readonly Point[]): Point[] {
  const count = points.length;
  const kept: Point[] = [];
  const furthest = Math.ceil(count / 3);
  const steps = points.map(({ x, y }, k) => (k === 0 ? 0 : Math.hypot(x - points[k - 1]!.x, y - points[k - 1]!.y)));
  for (let i = 0; i < count; ) {
    kept.push(points[i]!);
    const p = points[i]!;
    let way = 0;
    let jump = i + 1;
    for (let k = i + 1; k < Math.min(count, i + furthest); k++) {
      way += steps[k]!;
      if (way > FURTHEST) break;
      const [dx, dy] = [points[k]!.x - p.x, points[k]!.y - p.y];
      if (way <= 0.5 || Math.abs(dx) >= FIBRE_GAP || Math.abs(dy) >= FIBRE_GAP) continue;
      const gap = Math.hypot(dx, dy);
      if (gap < FIBRE_GAP && way > FIBRE_WAY * Math.max(gap, 0.1)) jump = k;
    }
    i = jump;
  }
  return kept;
}
