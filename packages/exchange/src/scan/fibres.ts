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
  // How long the outline is up to each point, and its longest step.
  const ways = new Float64Array(count);
  let longest = 0;
  for (let k = 1; k < count; k++) {
    const step = Math.hypot(points[k]!.x - points[k - 1]!.x, points[k]!.y - points[k - 1]!.y);
    ways[k] = ways[k - 1]! + step;
    longest = Math.max(longest, step);
  }
  for (let i = 0; i < count; ) {
    kept.push(points[i]!);
    const p = points[i]!;
    let jump = i + 1;
    for (let k = i + 1; k < Math.min(count, i + furthest); k++) {
      const way = ways[k]! - ways[i]!;
      if (way > FURTHEST) break;
      const [dx, dy] = [points[k]!.x - p.x, points[k]!.y - p.y];
      const away = Math.max(Math.abs(dx), Math.abs(dy));
      if (away >= FIBRE_GAP) {
        // So far away, so many steps are needed at least to come back: none of them can be an end.
        k += Math.max(0, Math.ceil((away - FIBRE_GAP) / longest) - 2);
        continue;
      }
      if (way <= 0.5) continue;
      const gap = Math.hypot(dx, dy);
      if (gap < FIBRE_GAP && way > FIBRE_WAY * Math.max(gap, 0.1)) jump = k;
    }
    i = jump;
  }
  return kept;
}
