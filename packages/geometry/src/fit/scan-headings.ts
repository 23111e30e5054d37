import type { Heading } from '../curve/heading.ts';
import type { Point } from '../curve/point.ts';
import { SAME_LENGTH } from '../curve/tolerance.ts';

/** Points in order, and for each the length along them up to it, mm. */
export interface Scan {
  readonly points: readonly Point[];
  readonly along: readonly number[];
}

/** Numbers of neighbours on each side that give a heading, the greatest first: many even out scatter, few follow a tight bend. */
const NEIGHBOURS: readonly number[] = [96, 48, 24, 12, 6, 3];
export const MOST_NEIGHBOURS: number = 96;
/** Numbers of neighbours on each side from which the scatter is found: with too few a parabola follows the scatter, with too many it misses the outline's bends. */
const SCATTER_NEIGHBOURS: readonly number[] = [6, 12, 24];
/** Places at which the scatter is measured. */
const SCATTER_PLACES = 100;
/** A parabola follows the outline where the points lie no further from it than this many times their scatter. */
const MORE_THAN_SCATTER = 1.25;
/** The share of the tolerance by which a parabola may always miss the points. */
const SHARE_OF_TOLERANCE = 0.05;

/** The points without repeats, with the length along them. */
export function measureAlong(given: readonly Point[]): Scan {
  const points: Point[] = [];
  const along: number[] = [];
  let length = 0;
  for (const p of given) {
    const before = points[points.length - 1];
    const step = before ? Math.hypot(p.x - before.x, p.y - before.y) : 0;
    if (before && step <= SAME_LENGTH) continue;
    length += step;
    points.push(p);
    along.push(length);
  }
  return { points, along };
}

/**
 * How far points may lie from a parabola that is taken as the outline, mm (root mean square): a little more than their scatter. The
 * scatter is the median along the scan, for the number of neighbours that gives the least.
 */
export function allowedScatter(scan: Scan, tolerance: number): number {
  const scatter = Math.min(...SCATTER_NEIGHBOURS.map((count) => middleScatter(scan, count)));
  return Math.max(Number.isFinite(scatter) ? MORE_THAN_SCATTER * scatter : 0, SHARE_OF_TOLERANCE * tolerance);
}

/** The median scatter about parabolas through so many neighbours, mm; Infinity where the scan has too few points. */
function middleScatter(scan: Scan, neighbours: number): number {
  const end = scan.points.length - 1;
  const found: number[] = [];
  const step = Math.max(1, Math.floor(end / SCATTER_PLACES));
  for (let i = neighbours; i <= end - neighbours; i += step) {
    found.push(fitParabola(scan, i, i - neighbours, i + neighbours).scatter);
  }
  found.sort((a, b) => a - b);
  return found[Math.floor(found.length / 2)] ?? Number.POSITIVE_INFINITY;
}

/**
 * The point and heading of a smooth stretch of a scan at each of its points: those of the parabola in the length along the points that
 * fits the neighbours best. Both ends stay where they are.
 */
export function headingsAlong(scan: Scan, scatter: number): Heading[] {
  const last = scan.points.length - 1;
  return scan.points.map((p, i) => {
    const { x, y, dx, dy } = headingAt(scan, i, 0, last, scatter);
    return i === 0 || i === last ? { x: p.x, y: p.y, dx, dy } : { x, y, dx, dy };
  });
}

/** The point and heading at point i, from as many neighbours between `first` and `last` as lie on a parabola but for their scatter. */
export function headingAt(scan: Scan, i: number, first: number, last: number, scatter: number): Heading {
  let best: Heading | undefined;
  for (const most of NEIGHBOURS) {
    const fit = fitParabola(scan, i, Math.max(first, i - most), Math.min(last, i + most));
    best = fit.heading;
    if (fit.scatter <= scatter) break;
  }
  return best!;
}

/** Fits x and y about point i by least squares, each as a parabola in the length along the points; two points give the line through both. Gives the root mean square distance across the heading as `scatter`, mm. */
function fitParabola(
  { points, along }: Scan,
  i: number,
  from: number,
  to: number,
): { heading: Heading; scatter: number } {
  const origin = points[i]!;
  if (to - from < 2) {
    const [dx, dy] = [points[to]!.x - points[from]!.x, points[to]!.y - points[from]!.y];
    return { heading: { x: origin.x, y: origin.y, dx, dy }, scatter: 0 };
  }
  // The sums of the normal equations, lengths scaled to ±1.
  let [s1, s2, s3, s4] = [0, 0, 0, 0];
  let [x0, x1, x2] = [0, 0, 0];
  let [y0, y1, y2] = [0, 0, 0];
  const scale = Math.max(along[to]! - along[i]!, along[i]! - along[from]!) || 1;
  for (let k = from; k <= to; k++) {
    const t = (along[k]! - along[i]!) / scale;
    const [x, y] = [points[k]!.x - origin.x, points[k]!.y - origin.y];
    const t2 = t * t;
    const t3 = t2 * t;
    s1 += t;
    s2 += t2;
    s3 += t3;
    s4 += t3 * t;
    x0 += x;
    x1 += t * x;
    x2 += t2 * x;
    y0 += y;
    y1 += t * y;
    y2 += t2 * y;
  }
  const sums = [to - from + 1, s1, s2, s3, s4];
  [x0, x1, x2] = solveParabola(sums, [x0, x1, x2]);
  [y0, y1, y2] = solveParabola(sums, [y0, y1, y2]);
  // Measure the scatter across the heading only: along it, scatter adds up in the length itself.
  const speed = x1 * x1 + y1 * y1 || 1;
  let scatter = 0;
  for (let k = from; k <= to; k++) {
    const t = (along[k]! - along[i]!) / scale;
    const offX = x0 + t * (x1 + t * x2) - (points[k]!.x - origin.x);
    const offY = y0 + t * (y1 + t * y2) - (points[k]!.y - origin.y);
    scatter += (offX * y1 - offY * x1) ** 2 / speed;
  }
  // Three coefficients come from the points, which leaves three degrees of freedom fewer for the scatter.
  scatter = Math.sqrt(scatter / Math.max(1, to - from - 2));
  return { heading: { x: origin.x + x0, y: origin.y + y0, dx: x1, dy: y1 }, scatter };
}

type Coefficients = readonly [number, number, number];

/** Solves the normal equations of a parabola by Cramer's rule; with t scaled to ±1 they are well conditioned. */
function solveParabola([n, s1, s2, s3, s4]: readonly number[], [b0, b1, b2]: readonly number[]): Coefficients {
  const [m00, m01, m02] = [s2! * s4! - s3! * s3!, s2! * s3! - s1! * s4!, s1! * s3! - s2! * s2!];
  const [m11, m12, m22] = [n! * s4! - s2! * s2!, s1! * s2! - n! * s3!, n! * s2! - s1! * s1!];
  const determinant = n! * m00 + s1! * m01 + s2! * m02;
  return [
    (m00 * b0! + m01 * b1! + m02 * b2!) / determinant,
    (m01 * b0! + m11 * b1! + m12 * b2!) / determinant,
    (m02 * b0! + m12 * b1! + m22 * b2!) / determinant,
  ];
}
