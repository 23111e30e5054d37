import type { Refusal } from '@fielded/core';
import type { Point } from '@fielded/geometry';
import { dropFibres } from './fibres.ts';
import type { LevelSample } from './level.ts';

/** Points along one face's cut: x in from the edge, y below the face, mm, from the edge inwards to the face. */
export interface ScannedSurface {
  readonly points: readonly Point[];
  readonly reach: number;
  readonly depth: number;
}

/** What the two faces of a sample show, and how its edge lies: at the right (`mirrored`) and where, mm. */
export interface Surfaces {
  readonly upper: ScannedSurface | null;
  readonly lower: ScannedSurface | null;
  readonly mirrored: boolean;
  readonly edge: number;
}

/** A surface within this of the face, mm, is the face. */
const ON_FACE = 0.06;
/** … unless it is off the face for so long, mm, over most of that way: noise of a picture comes back sooner. */
const OFF_FACE = 0.8;
const MOST_OF_IT = 0.7;
/** The sawn end of a sample may slant or be torn over this, mm. */
const FAR_END = 2.5;
/** Corners are rounded by the blur over this, mm. */
const ROUNDED = 0.15;

/**
 * Parts a level sample into what its two faces show, from the worked edge (the end that is thinner) inwards.
 */
export function partSurfaces({ points, thickness }: LevelSample): Surfaces | Refusal {
  const clean = dropFibres(points);
  const left = endThickness(clean, thickness, false);
  const right = endThickness(clean, thickness, true);
  if (Math.min(left, right) > thickness - 2 * ON_FACE)
    return {
      refused: 'both ends of the sample are as thick as its field: there is no cut on it',
      instead: 'Scan the end grain of a piece with the worked edge on it',
    };
  const mirrored = right < left;
  // Run from the edge: mirrored samples also run the other way round.
  const turned = mirrored ? clean.map(({ x, y }) => ({ x: -x, y })).reverse() : clean;
  const edge = edgeOf(turned);
  const placed = turned.map(({ x, y }) => ({ x: x - edge, y }));
  const [up, down] = fromTip(placed);
  return {
    upper: readSurface(up.map(({ x, y }) => ({ x, y: thickness - y }))),
    lower: readSurface(down),
    mirrored,
    edge: mirrored ? -edge : edge,
  };
}

/** How tall the sample is over the last 0.6 mm at an end. */
function endThickness(points: readonly Point[], thickness: number, right: boolean): number {
  const far = right ? Math.max(...extremes(points)) : Math.min(...extremes(points));
  let most = Number.NEGATIVE_INFINITY;
  let least = Number.POSITIVE_INFINITY;
  for (const { x, y } of points) {
    if (Math.abs(x - far) > 0.6) continue;
    most = Math.max(most, y);
    least = Math.min(least, y);
  }
  return Math.min(thickness, most - least);
}

function extremes(points: readonly Point[]): [number, number] {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const { x } of points) {
    if (x < least) least = x;
    if (x > most) most = x;
  }
  return [least, most];
}

/** Where the upright edge stands: the middle of the points within 0.25 mm of the outermost one that has many beside it. */
function edgeOf(points: readonly Point[]): number {
  const xs = points.map(({ x }) => x).sort((a, b) => a - b);
  const enough = Math.max(3, Math.floor(points.length / 2000));
  let k = 0;
  while (k + enough < xs.length && xs[k + enough]! - xs[k]! > 0.12) k++;
  const near = xs.slice(k).filter((x) => x - xs[k]! <= 0.25);
  return near[Math.floor(near.length / 2)]!;
}

/** The outline cut at the middle of its tip: one way up and in, the other down and in, to where the sample is longest. */
function fromTip(points: readonly Point[]): [Point[], Point[]] {
  const count = points.length;
  const tip = points.filter(({ x }) => Math.abs(x) < 0.2);
  const middle = tip.reduce((sum, { y }) => sum + y, 0) / tip.length;
  let start = 0;
  let best = Number.POSITIVE_INFINITY;
  points.forEach(({ x, y }, i) => {
    const away = Math.hypot(x, y - middle);
    if (away < best) {
      best = away;
      start = i;
    }
  });
  let far = 0;
  points.forEach(({ x }, i) => {
    if (x > points[far]!.x) far = i;
  });
  const walk = (step: 1 | -1) => {
    const way: Point[] = [];
    for (let i = start; i !== far; i = (i + step + count) % count) way.push(points[i]!);
    return way;
  };
  const one = walk(1);
  const other = walk(-1);
  const height = (way: readonly Point[]) => way.reduce((sum, { y }) => sum + y, 0) / Math.max(1, way.length);
  return height(one) > height(other) ? [one, other] : [other, one];
}

/** One face's cut, y below the face; null where it has none. Its ends are run on to the edge and to the face past the rounding of the blur. */
function readSurface(way: readonly Point[]): ScannedSurface | null {
  const first = way.findIndex(({ x }) => x > ROUNDED);
  if (first < 0) return null;
  // The far end was sawn off for the sample: it is no part of the cut.
  const far = extremes(way)[1] - FAR_END;
  let last = -1;
  for (let i = first; i < way.length && way[i]!.x < far; i++) if (way[i]!.y > ON_FACE && isCut(way, i)) last = i;
  if (last - first < 5) return null;
  const points = way.slice(first, last + 1);
  const depth = atEdge(points);
  const reach = whereItEnds(points);
  return { points: [{ x: 0, y: depth }, ...points, { x: reach, y: 0 }], reach, depth };
}

/** Whether the surface up to a point has left the face, and not just that point. */
function isCut(way: readonly Point[], at: number): boolean {
  let along = 0;
  let off = 0;
  let count = 0;
  for (let i = at; i > 0 && along < OFF_FACE; i--) {
    along += Math.hypot(way[i]!.x - way[i - 1]!.x, way[i]!.y - way[i - 1]!.y);
    count++;
    if (way[i]!.y > ON_FACE) off++;
  }
  return off >= MOST_OF_IT * count;
}

/** The surface run on to the edge, by the straight line through its first millimetre. */
function atEdge(points: readonly Point[]): number {
  const near = points.filter(({ x }) => x < ROUNDED + 1);
  const { slope, mx, my } = through(near.map(({ x, y }) => [x, y] as const));
  return my - slope * mx;
}

/** Where the surface meets the face: run on straight, or level as an arc that touches it, whichever its last stretch is nearer to. */
function whereItEnds(points: readonly Point[]): number {
  const last = points[points.length - 1]!;
  const near = points.filter(({ x, y }, i) => y < 0.6 && last.x - x < 8 && i > points.length / 3);
  if (near.length < 6) return last.x;
  const straight = through(near.map(({ x, y }) => [y, x] as const));
  const touching = through(near.map(({ x, y }) => [Math.sqrt(Math.max(0, y)), x] as const));
  const { slope, mx, my } = touching.left < straight.left ? touching : straight;
  return Math.max(last.x - 0.05, my - slope * mx);
}

/** Least squares of b over a: slope, middle and what is left. */
function through(pairs: readonly (readonly [number, number])[]): {
  slope: number;
  mx: number;
  my: number;
  left: number;
} {
  const n = pairs.length;
  const mx = pairs.reduce((sum, [a]) => sum + a, 0) / n;
  const my = pairs.reduce((sum, [, b]) => sum + b, 0) / n;
  let aa = 0;
  let ab = 0;
  let bb = 0;
  for (const [a, b] of pairs) {
    aa += (a - mx) ** 2;
    ab += (a - mx) * (b - my);
    bb += (b - my) ** 2;
  }
  const slope = aa > 1e-12 ? ab / aa : 0;
  return { slope, mx, my, left: bb - slope * ab };
}
