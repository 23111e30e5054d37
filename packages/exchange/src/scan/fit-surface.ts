import { type Chain, curveLength, fitPoints, line, type Point, pointAt } from '@fielded/geometry';
import { fitStretches } from './fit-stretches.ts';

/** How far arcs may lie from the points, mm, first to last tried: within the first no point's scatter is followed. */
const TOLERANCES = [0.02, 0.025, 0.03, 0.015, 0.04];
/** A fit whose arcs nowhere leave the points by more than this, mm, is taken at once. */
const GOOD = 0.03;
/** Arcs that leave the points by more than this, mm, are no fit at all. */
const MOST_SWING = 0.15;
/** Lines and arcs that a surface was drawn with lie within this of it, mm, or it was drawn otherwise. */
const DRAWN = 0.05;
/** What neighbouring points scatter alike is not seen between them: no less than this, mm, and this part of a pixel. */
const LEAST_SCATTER = 0.002;
const OF_PIXEL = 0.06;
/** Arcs that leave the points by more, mm, are not brought near them by a little more or less tolerance. */
const HOPELESS = 0.3;
/** Points are taken together over this way, mm: it rounds a corner by less than a tenth of it. */
const BUNDLE = 0.1;
/** A surface of more bundles than the long side of A4 has, 0.1 mm apart, was torn: no few lines and arcs are looked for in it. */
const MOST_BUNDLES = 4000;
/** Places along a fit at which its way from the points is measured, mm apart. */
const STEP = 0.1;

/**
 * Lines and arcs through a scanned surface (x in from the edge, y below the face, pixels so many mm; the chain has y up), and how far the points
 * lie from them at most, corners that the blur has rounded apart: those it was drawn with, where it was drawn with a few. Else as many
 * tangent arcs as it takes, measured both ways: a fit that swings out between its points does not pass.
 */
export function fitSurface(points: readonly Point[], pixel: number): { chain: Chain; deviation: number } {
  const bundles = bundled(points).map(({ x, y }) => ({ x, y: -y }));
  const scatter = scatterOf(bundles, pixel);
  const drawn = bundles.length > MOST_BUNDLES ? null : fitStretches(bundles, scatter);
  if (drawn !== null && drawn.deviation <= Math.max(DRAWN, 5 * scatter)) return drawn;
  let best: { chain: Chain; deviation: number } = { chain: [], deviation: Number.POSITIVE_INFINITY };
  for (const tolerance of TOLERANCES) {
    const fit = fitPoints(bundles, tolerance);
    const deviation = Math.max(fit.deviation, swing(fit.chain, bundles));
    if (deviation < best.deviation) best = { chain: fit.chain, deviation };
    if (deviation <= GOOD || deviation > HOPELESS || isTorn(fit.chain, bundles)) break;
  }
  if (best.deviation <= MOST_SWING) return best;
  // Points that scatter too much for arcs: the way from bundle to bundle is no further from them than they are apart.
  const chain = bundles.slice(1).map((p, i) => line(bundles[i]!.x, bundles[i]!.y, p.x, p.y));
  return { chain, deviation: BUNDLE / 2 };
}

/** A long surface that takes an arc for every other bundle is torn: no other tolerance serves it better. */
function isTorn(chain: Chain, bundles: readonly Point[]): boolean {
  return bundles.length > LONG && chain.length > bundles.length / 2;
}
const LONG = 400;

/** How far bundles scatter about the surface, mm: by their second differences, of which the middle one is 0.6745·√6 times as large. */
function scatterOf(bundles: readonly Point[], pixel: number): number {
  const bends: number[] = [];
  for (let i = 1; i + 1 < bundles.length; i++) {
    const [p, q, r] = [bundles[i - 1]!, bundles[i]!, bundles[i + 1]!];
    const [dx, dy] = [r.x - p.x, r.y - p.y];
    const length = Math.hypot(dx, dy);
    if (length > 0) bends.push((2 * Math.abs((q.x - p.x) * dy - (q.y - p.y) * dx)) / length);
  }
  bends.sort((a, b) => a - b);
  const middle = bends[Math.floor(bends.length / 2)] ?? 0;
  return Math.max(LEAST_SCATTER, OF_PIXEL * pixel, middle / (0.6745 * Math.sqrt(6)));
}

/** Means of neighbouring points; the first and the last stay as they are. */
function bundled(points: readonly Point[]): Point[] {
  const means: Point[] = [points[0]!];
  let sum = { x: 0, y: 0 };
  let count = 0;
  let way = 0;
  for (let i = 1; i < points.length - 1; i++) {
    const p = points[i]!;
    const before = points[i - 1]!;
    way += i === 1 ? 0 : Math.hypot(p.x - before.x, p.y - before.y);
    sum = { x: sum.x + p.x, y: sum.y + p.y };
    count++;
    if (way < BUNDLE) continue;
    means.push({ x: sum.x / count, y: sum.y / count });
    sum = { x: 0, y: 0 };
    count = 0;
    way = 0;
  }
  return [...means, points[points.length - 1]!];
}

/** How far the chain leaves the way from point to point, mm. */
function swing(chain: Chain, points: readonly Point[]): number {
  const lines = points.slice(1).map((p, i) => ({ from: points[i]!, to: p }));
  let most = 0;
  let at = 0;
  for (const c of chain) {
    const steps = Math.max(1, Math.ceil(curveLength(c) / STEP));
    for (let k = 0; k <= steps; k++) {
      const p = pointAt(c, k / steps);
      // The chain runs along the points: the nearest stretch is near the last one.
      let nearest = Number.POSITIVE_INFINITY;
      let place = at;
      for (let i = Math.max(0, at - 40); i < Math.min(lines.length, at + 80); i++) {
        const away = toLine(p, lines[i]!.from, lines[i]!.to);
        if (away < nearest) {
          nearest = away;
          place = i;
        }
      }
      at = place;
      most = Math.max(most, nearest);
    }
  }
  return most;
}

function toLine(p: Point, from: Point, to: Point): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - from.x) * dx + (p.y - from.y) * dy) / square));
  return Math.hypot(p.x - from.x - t * dx, p.y - from.y - t * dy);
}
