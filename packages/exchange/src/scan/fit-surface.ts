import { type Chain, curveLength, fitPoints, line, type Point, pointAt } from '@fielded/geometry';

/** How far arcs may lie from the points, mm, first to last tried: within the first no point's scatter is followed. */
const TOLERANCES = [0.02, 0.025, 0.03, 0.015, 0.04];
/** A fit whose arcs nowhere leave the points by more than this, mm, is taken at once. */
const GOOD = 0.03;
/** Arcs that leave the points by more than this, mm, are no fit at all. */
const MOST_SWING = 0.15;
/** Points are taken together over this way, mm: it rounds a corner by less than a tenth of it. */
const BUNDLE = 0.1;
/** Places along a fit at which its way from the points is measured, mm apart. */
const STEP = 0.1;

/**
 * Lines and tangent arcs through a scanned surface (x in from the edge, y below the face; the chain has y up), and how far they and the
 * points lie from each other at most, measured both ways: a fit that swings out between its points does not pass.
 */
export function fitSurface(points: readonly Point[]): { chain: Chain; deviation: number } {
  const bundles = bundled(points).map(({ x, y }) => ({ x, y: -y }));
  let best: { chain: Chain; deviation: number } = { chain: [], deviation: Number.POSITIVE_INFINITY };
  for (const tolerance of TOLERANCES) {
    const fit = fitPoints(bundles, tolerance);
    const deviation = Math.max(fit.deviation, swing(fit.chain, bundles));
    if (deviation < best.deviation) best = { chain: fit.chain, deviation };
    if (deviation <= GOOD) break;
  }
  if (best.deviation <= MOST_SWING) return best;
  // Points that scatter too much for arcs: the way from bundle to bundle is no further from them than they are apart.
  const chain = bundles.slice(1).map((p, i) => line(bundles[i]!.x, bundles[i]!.y, p.x, p.y));
  return { chain, deviation: BUNDLE / 2 };
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
