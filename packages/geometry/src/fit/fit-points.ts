import { type Chain, line } from '../curve/curve.ts';
import { distanceTo } from '../curve/distance.ts';
import type { Heading } from '../curve/heading.ts';
import type { Point } from '../curve/point.ts';
import { fitTrack } from './arc-spans.ts';
import { splitAtCorners } from './scan-corners.ts';
import { allowedScatter, headingsAlong, measureAlong, type Scan } from './scan-headings.ts';
import type { ArcFit, Track } from './track.ts';

/** How far fitted arcs may lie from scanned points, mm, unless the caller asks otherwise. */
export const SCAN_TOLERANCE = 0.01;

/** Points of a span that are tried while its length is sought; the finished fit is measured at all points. */
const TRIAL_POINTS = 60;

/** Points are joined in bundles until these are so many times the scatter apart. */
const APART_OF_SCATTER = 10;

/** The tolerances that bundles are fitted with, in turn, as shares of that of the points, which scatter about the bundles. */
const SHARES_WHEN_BUNDLED = [0.7, 0.5, 0.4, 0.32, 0.25, 0.18];

/**
 * Fits an outline given by points in order (a scan, a traced drawing) with lines and tangent arcs within `tolerance` mm.
 *
 * Method: the outline is split at its corners (`splitAtCorners`). Between corners it is taken as smooth: at each point it follows the
 * parabola through the neighbours, as many of them as lie on one but for their scatter (`headingsAlong`). Arcs are fitted to that as
 * to a curve (`fitTrack`). The deviation is the greatest distance of any point from the chain, measured; it exceeds the tolerance
 * only where the points scatter by about as much. Repeated points are skipped; fewer than two points give an empty chain. Time grows
 * in proportion to the number of points.
 *
 * @throws RangeError for a tolerance that is not above 0.
 * @example fitPoints([{ x: 0, y: 0 }, { x: 5, y: 0.001 }, { x: 10, y: 0 }]).chain.length // 1
 */
export function fitPoints(points: readonly Point[], tolerance: number = SCAN_TOLERANCE): ArcFit {
  if (!(tolerance > 0)) throw new RangeError(`the tolerance must be above 0 mm, got ${tolerance}`);
  const scan = measureAlong(points);
  if (scan.points.length < 2) return { chain: [], deviation: 0 };
  const bundled = bundle(scan, allowedScatter(scan, tolerance));
  const shares = bundled === scan ? [1] : SHARES_WHEN_BUNDLED;
  let best: ArcFit | undefined;
  for (const share of shares) {
    const chain = fitStretches(bundled, share * tolerance);
    const deviation = furthest(scan.points, chain, 1);
    if (!best || deviation < best.deviation) best = { chain, deviation };
    if (deviation <= tolerance) break;
  }
  return best!;
}

/**
 * Joins points that lie closer together than they scatter, which say nothing about the direction of the outline, in bundles: each
 * becomes its mean, and the bundles stand well apart. Returns the scan itself where its points already do.
 */
function bundle(scan: Scan, scatter: number): Scan {
  const { points, along } = scan;
  const last = points.length - 1;
  const size = Math.ceil((APART_OF_SCATTER * scatter) / (along[last]! / last));
  if (size < 2 || last < 8 * size) return scan;
  const middles: Point[] = [points[0]!];
  for (let i = 1; i + size <= last; i += size) {
    const part = points.slice(i, i + size);
    middles.push({
      x: part.reduce((sum, p) => sum + p.x, 0) / size,
      y: part.reduce((sum, p) => sum + p.y, 0) / size,
    });
  }
  return measureAlong([...middles, points[last]!]);
}

/** Fits the smooth stretches of a scan between its corners. */
function fitStretches(scan: Scan, tolerance: number): Chain {
  const scatter = allowedScatter(scan, tolerance);
  return splitAtCorners(scan, scatter).flatMap((stretch) => fitSmooth(measureAlong(stretch), scatter, tolerance));
}

/** Fits one smooth stretch: with a line where that is close enough, else with arcs. */
function fitSmooth(scan: Scan, scatter: number, tolerance: number): Chain {
  const { points } = scan;
  const straight = straightThrough(points);
  if (furthest(points, straight, 1) <= tolerance) return straight;
  const headings = headingsAlong(scan, scatter);
  const fit = fitTrack(trackThrough(points, headings), tolerance);
  if (fit.deviation <= tolerance) return fit.chain;
  // With few points, or bends between them, arcs through the points themselves come nearer than arcs through the smoothed ones.
  const through = fitTrack(
    trackThrough(
      points,
      headings.map((h, i) => ({ ...h, ...points[i]! })),
    ),
    tolerance,
  );
  return through.deviation < fit.deviation ? through.chain : fit.chain;
}

/** Points with their headings as a track: at u it is the point nearest to the fraction u of their number. */
function trackThrough(points: readonly Point[], headings: readonly Heading[]): Track {
  const count = points.length - 1;
  const index = (u: number) => Math.min(count, Math.max(0, Math.round(u * count)));
  const away = (from: number, to: number, arcs: Chain, most: number): number => {
    const [a, b] = [index(from), index(to)];
    if (arcs.length === 0) return a === b ? 0 : Number.POSITIVE_INFINITY;
    return furthest(points.slice(a, b + 1), arcs, Math.max(1, Math.floor((b - a) / most)));
  };
  return {
    at: (u: number): Heading => headings[index(u)]!,
    tryOut: (from, to, arcs) => away(from, to, arcs, TRIAL_POINTS),
    measure: (from, to, arcs) => away(from, to, arcs, Number.POSITIVE_INFINITY),
    leastSpan: 1.5 / count,
  };
}

function straightThrough(points: readonly Point[]): Chain {
  const [from, to] = [points[0]!, points[points.length - 1]!];
  return [line(from.x, from.y, to.x, to.y)];
}

/** The curves that are tried first for a point: so many before and after the one nearest to the last point, since a chain runs along its points. */
const NEARBY = { before: 8, after: 24 };

/** The greatest distance of every `step`th point from a chain, mm. Time grows with the number of points where they run along the chain. */
function furthest(points: readonly Point[], chain: Chain, step: number): number {
  let most = 0;
  let at = 0;
  for (let i = 0; i < points.length; i += step) {
    const { x, y } = points[i]!;
    let found = nearestOf(chain, x, y, at - NEARBY.before, at + NEARBY.after);
    // Is this the furthest point so far? Only then is it compared with the whole chain.
    if (found.away > most) found = nearestOf(chain, x, y, 0, chain.length);
    at = found.at;
    most = Math.max(most, found.away);
  }
  return most;
}

/** The nearest of the curves from place `from` up to, but not including, place `to`, and its distance, mm. */
function nearestOf(chain: Chain, x: number, y: number, from: number, to: number): { at: number; away: number } {
  const nearest = { at: 0, away: Number.POSITIVE_INFINITY };
  for (let k = Math.max(0, from); k < Math.min(chain.length, to); k++) {
    const away = distanceTo(chain[k]!, x, y);
    if (away < nearest.away) {
      nearest.at = k;
      nearest.away = away;
    }
  }
  return nearest;
}
