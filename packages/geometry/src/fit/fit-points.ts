import { type Chain, line } from '../curve/curve.ts';
import { distanceTo } from '../curve/distance.ts';
import type { Heading } from '../curve/heading.ts';
import type { Point } from '../curve/point.ts';
import { fitTrack } from './arc-spans.ts';
import { splitAtCorners } from './scan-corners.ts';
import { allowedScatter, headingsAlong, measureAlong, type Scan } from './scan-headings.ts';
import type { ArcFit, Track } from './track.ts';

/** How far fitted arcs may lie from scanned points, mm, unless asked otherwise. */
export const SCAN_TOLERANCE = 0.01;

/** Points tried of a span while its length is sought; all count in the end. */
const TRIAL_POINTS = 60;

/** Bundles of points stand this many times their scatter apart. */
const APART_OF_SCATTER = 10;

/** What is asked of bundles, as shares of the tolerance: the points scatter about them. */
const SHARES_WHEN_BUNDLED = [0.7, 0.5, 0.4, 0.32, 0.25, 0.18];

/**
 * Fits an outline given by points in order (a scan, a traced drawing) with lines and tangent arcs within `tolerance` mm.
 *
 * The outline is parted at its corners (`splitAtCorners`); between them it is smooth, runs where parabolas through
 * neighbouring points run, as many neighbours as differ from one by their scatter only (`headingsAlong`), and is fitted
 * with arcs like a curve (`fitTrack`). The deviation is the greatest distance of any point from the chain, measured: more
 * than the tolerance only where the points scatter by about as much. Points that repeat are skipped; fewer than two give an
 * empty chain. Work grows with the number of points. Throws RangeError for a tolerance that is not above 0.
 *
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
 * Points that lie closer together than they scatter tell nothing of which way they head: they are taken in bundles, each
 * its middle, until the bundles stand well apart. The scan itself where they do already.
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

function fitStretches(scan: Scan, tolerance: number): Chain {
  const scatter = allowedScatter(scan, tolerance);
  return splitAtCorners(scan, scatter).flatMap((stretch) => fitSmooth(measureAlong(stretch), scatter, tolerance));
}

function fitSmooth(scan: Scan, scatter: number, tolerance: number): Chain {
  const { points } = scan;
  const straight = straightThrough(points);
  if (furthest(points, straight, 1) <= tolerance) return straight;
  const headings = headingsAlong(scan, scatter);
  const fit = fitTrack(trackThrough(points, headings), tolerance);
  if (fit.deviation <= tolerance) return fit.chain;
  // Few points, or bends between them: arcs from point to point as they are come nearer than the smoothed ones.
  const through = fitTrack(
    trackThrough(
      points,
      headings.map((h, i) => ({ ...h, ...points[i]! })),
    ),
    tolerance,
  );
  return through.deviation < fit.deviation ? through.chain : fit.chain;
}

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

/** Pieces before and after the one that was nearest to the point before: a chain runs along its points. */
const NEARBY = { before: 8, after: 24 };

/** Greatest distance of every `step`th point from a chain, mm: in time that grows with both, where the points run along the chain. */
function furthest(points: readonly Point[], chain: Chain, step: number): number {
  let most = 0;
  let at = 0;
  for (let i = 0; i < points.length; i += step) {
    const { x, y } = points[i]!;
    let found = nearestOf(chain, x, y, at - NEARBY.before, at + NEARBY.after);
    // Only a point that would be the furthest has to be held against the whole chain.
    if (found.away > most) found = nearestOf(chain, x, y, 0, chain.length);
    at = found.at;
    most = Math.max(most, found.away);
  }
  return most;
}

/** The nearest of the pieces `from` to `to`, and how far it is. */
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
