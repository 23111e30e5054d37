import type { Point } from '@fielded/geometry';

/** How far off the points that are given a point may lie without being given itself, wood mm. */
const NEAR = 0.05;

/**
 * The places in a line of points by which it is best set out, in their order: its ends and, one after the other, the point that
 * lies farthest off the chords through those chosen before, up to `most` of them. All of them where they are no more.
 *
 * Source: the choice of points by D. H. Douglas and T. K. Peucker, Cartographica 10 (1973) 112-122, taken in order of distance.
 */
export function choosePoints(points: readonly Point[], most: number): number[] {
  const last = points.length - 1;
  if (last < most) return points.map((_, i) => i);
  const chosen = [0, last];
  const spans = [farthest(points, 0, last)];
  while (chosen.length < most) {
    const widest = spans.reduce((one, other) => (other.off > one.off ? other : one));
    if (widest.off < NEAR) break;
    chosen.push(widest.at);
    spans.splice(
      spans.indexOf(widest),
      1,
      farthest(points, widest.from, widest.at),
      farthest(points, widest.at, widest.to),
    );
  }
  return chosen.sort((a, b) => a - b);
}

interface Span {
  readonly from: number;
  readonly to: number;
  /** The point between them that lies farthest off the chord, and how far. */
  readonly at: number;
  readonly off: number;
}

function farthest(points: readonly Point[], from: number, to: number): Span {
  const [a, b] = [points[from]!, points[to]!];
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  let [at, off] = [from, 0];
  for (let i = from + 1; i < to; i += 1) {
    const { x, y } = points[i]!;
    const away =
      length < 1e-9
        ? Math.hypot(x - a.x, y - a.y)
        : Math.abs((b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x)) / length;
    if (away > off) [at, off] = [i, away];
  }
  return { from, to, at, off };
}
