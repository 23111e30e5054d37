import type { Point } from '@fielded/geometry';

/** Points of a surface, by their places in the list, that were drawn as one line or one arc. */
export interface Stretch {
  readonly kind: 'line' | 'arc';
  readonly from: number;
  readonly to: number;
}

/** What a further line or arc has to save of the squares of the scatter, twice over, to be drawn (Schwarz 1978, more strictly: neighbouring points scatter alike). */
const PRICE = { line: 14, arc: 20 } as const;
/** A point left out between two stretches, where the blur rounds a corner, costs so much; and so many may be. */
const LEFT_OUT = 2.5;
const MOST_LEFT_OUT = 5;
/** Points that a line and an arc need at least. */
const LEAST_POINTS = { line: 3, arc: 7 } as const;
/** Arcs of other radii, mm, are not ground into a knife for a panel. */
const RADII = [0.5, 400] as const;

/**
 * Parts a surface into the fewest lines and arcs that its points bear (formula T4): of all ways to part it, the one with the least
 * Σ (squares of the distances)/(2σ²) + price of each stretch, found by going through the ends in order (Bellman 1961). Distances are
 * those of the least squares line, and of Kåsa's circle (1976). `scatter` is σ, mm.
 */
export function partStretches(points: readonly Point[], scatter: number): Stretch[] {
  const count = points.length;
  const sums = sumUp(points);
  const weight = 1 / (2 * scatter * scatter);
  // The least cost of everything before a place, and where the last stretch before it starts.
  const cost = new Float64Array(count + 1).fill(Number.POSITIVE_INFINITY);
  const start = new Int32Array(count + 1);
  const kinds: Stretch['kind'][] = [];
  cost[0] = 0;
  const begin = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  const before = new Int32Array(count);
  for (let end = 0; end < count; end++) {
    // A stretch may begin at `end` after any of the places just before.
    for (let gap = 0; gap <= Math.min(MOST_LEFT_OUT, end); gap++) {
      const least = cost[end - gap]! + gap * LEFT_OUT;
      if (least < begin[end]!) {
        begin[end] = least;
        before[end] = end - gap;
      }
    }
    // Of all stretches that end here, which makes everything up to here cheapest?
    for (let from = 0; from + LEAST_POINTS.line - 1 <= end; from++) {
      const base = begin[from]!;
      const most = cost[end + 1]!;
      if (base + PRICE.line >= most) continue;
      const straight = base + PRICE.line + weight * lineError(sums, from, end);
      if (straight < most) {
        cost[end + 1] = straight;
        start[end + 1] = from;
        kinds[end + 1] = 'line';
      }
      if (end - from + 1 < LEAST_POINTS.arc || base + PRICE.arc >= cost[end + 1]!) continue;
      const round = base + PRICE.arc + weight * arcError(sums, from, end);
      if (round < cost[end + 1]!) {
        cost[end + 1] = round;
        start[end + 1] = from;
        kinds[end + 1] = 'arc';
      }
    }
  }
  return walkBack(cost, start, before, kinds);
}

/** The stretches of the cheapest way, found from its last one back to its first. */
function walkBack(
  cost: Float64Array,
  start: Int32Array,
  before: Int32Array,
  kinds: readonly Stretch['kind'][],
): Stretch[] {
  const count = before.length;
  const stretches: Stretch[] = [];
  // The last points may be left out as well.
  let end = count;
  for (let gap = 1; gap <= MOST_LEFT_OUT; gap++)
    if (cost[count - gap]! + gap * LEFT_OUT < cost[end]! + (count - end) * LEFT_OUT) end = count - gap;
  while (end > 0 && Number.isFinite(cost[end]!)) {
    const from = start[end]!;
    stretches.push({ kind: kinds[end]!, from, to: end - 1 });
    end = before[from]!;
  }
  return stretches.reverse();
}

/** Sums from the first point on, about the middle of all, of x, y, their squares and products, and of z = x² + y². */
interface Sums {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly xx: Float64Array;
  readonly xy: Float64Array;
  readonly yy: Float64Array;
  readonly xz: Float64Array;
  readonly yz: Float64Array;
  readonly zz: Float64Array;
}

function sumUp(points: readonly Point[]): Sums {
  const count = points.length;
  const mx = points.reduce((sum, p) => sum + p.x, 0) / count;
  const my = points.reduce((sum, p) => sum + p.y, 0) / count;
  const list = () => new Float64Array(count + 1);
  const sums = { x: list(), y: list(), xx: list(), xy: list(), yy: list(), xz: list(), yz: list(), zz: list() };
  points.forEach((p, i) => {
    const [x, y] = [p.x - mx, p.y - my];
    const z = x * x + y * y;
    sums.x[i + 1] = sums.x[i]! + x;
    sums.y[i + 1] = sums.y[i]! + y;
    sums.xx[i + 1] = sums.xx[i]! + x * x;
    sums.xy[i + 1] = sums.xy[i]! + x * y;
    sums.yy[i + 1] = sums.yy[i]! + y * y;
    sums.xz[i + 1] = sums.xz[i]! + x * z;
    sums.yz[i + 1] = sums.yz[i]! + y * z;
    sums.zz[i + 1] = sums.zz[i]! + z * z;
  });
  return sums;
}

/** Sum of the squares of the distances from the least squares line through points `from` to `to`: the smaller principal moment. */
function lineError({ x, y, xx, xy, yy }: Sums, from: number, to: number): number {
  const n = to + 1 - from;
  const sx = x[to + 1]! - x[from]!;
  const sy = y[to + 1]! - y[from]!;
  const uu = xx[to + 1]! - xx[from]! - (sx * sx) / n;
  const uv = xy[to + 1]! - xy[from]! - (sx * sy) / n;
  const vv = yy[to + 1]! - yy[from]! - (sy * sy) / n;
  const half = (uu - vv) / 2;
  return Math.max(0, (uu + vv) / 2 - Math.sqrt(half * half + uv * uv));
}

/** The same from Kåsa's circle, whose residuals are 2R times as large; Infinity for one that no knife has. */
function arcError(sums: Sums, from: number, to: number): number {
  const n = to + 1 - from;
  const part = (of: Float64Array) => of[to + 1]! - of[from]!;
  const [sx, sy] = [part(sums.x), part(sums.y)];
  const [mx, my] = [sx / n, sy / n];
  const [xx, xy, yy] = [part(sums.xx), part(sums.xy), part(sums.yy)];
  const [xz, yz, zz] = [part(sums.xz), part(sums.yz), part(sums.zz)];
  const [uu, uv, vv] = [xx - mx * sx, xy - mx * sy, yy - my * sy];
  // w is the square of the way from the middle of these points: z − 2 mx x − 2 my y + c.
  const c = mx * mx + my * my;
  const sz = xx + yy;
  const sw = sz - 2 * mx * sx - 2 * my * sy + c * n;
  const uw = xz - 2 * mx * xx - 2 * my * xy + c * sx - mx * sw;
  const vw = yz - 2 * mx * xy - 2 * my * yy + c * sy - my * sw;
  const ww =
    zz +
    4 * mx * mx * xx +
    4 * my * my * yy +
    c * c * n -
    4 * mx * xz -
    4 * my * yz +
    2 * c * sz +
    8 * mx * my * xy -
    4 * c * (mx * sx + my * sy) -
    (sw * sw) / n;
  const det = uu * vv - uv * uv;
  if (!(det > 1e-12 * uu * vv)) return Number.POSITIVE_INFINITY;
  const a = (uw * vv - vw * uv) / det;
  const b = (vw * uu - uw * uv) / det;
  const square = (a * a + b * b) / 4 + sw / n;
  if (!(square > RADII[0] ** 2 && square < RADII[1] ** 2)) return Number.POSITIVE_INFINITY;
  return Math.max(0, ww - a * uw - b * vw) / (4 * square);
}
