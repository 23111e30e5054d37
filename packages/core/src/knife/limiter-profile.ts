import {
  arcAngle,
  type Chain,
  type Curve,
  flipCurve,
  heightAt,
  line,
  pointAlong,
  reverseCurves,
  SAME_LENGTH,
  shiftCurve,
  splitAtExtremes,
  upperEnvelope,
  withEnds,
} from '@fielded/geometry';

/**
 * The sideways clearance of a limiter from the wood, mm; no more than its gap on the radius. Common practice. The larger it is, the
 * further the knife stands out on the radius along steep edges: with 1.1 and 0.2 mm from 10° off square.
 */
const SIDEWAYS = 0.2;

/** The sideways clearance of a limiter behind a profile as wide as that, mm. */
export function sideGap(gap: number, width: number): number {
  return Math.min(SIDEWAYS, gap, width / 4);
}

/**
 * A limiter's profile behind a knife's, both as the head sees them: `gap` mm back on the radius at every station, and `side` mm
 * away along the spindle (formula K7).
 *
 * It is the profile less a rhombus of those two half-widths: on the radius the knife stands out by `gap` wherever its edge is
 * less steep than gap : side, and beside steeper walls the limiter keeps `side` clear. An undercut counts as what it sweeps.
 * Exact: made of the profile's own lines and arcs and of the rhombus's sides at its corners.
 */
export function limiterProfile(chain: Chain, gap: number, side: number): Chain {
  if (!(gap > 0 && side > 0)) return chain;
  // Mirror the profile, so that its lower envelope becomes an upper one.
  const depths = upperEnvelope([chain]).map((c) => flipCurve(c, 0));
  const pieces = splitAtExtremes(depths).filter((c) => c.x1 > c.x0);
  const [from, to] = [pieces[0]!.x0, pieces[pieces.length - 1]!.x1];
  const moved = (dx: number, dy: number) => depths.map((c) => shiftCurve(c, dx, dy));
  const deepest = upperEnvelope([moved(0, gap), moved(side, 0), moved(-side, 0), ...tents(pieces, gap, side)]);
  const along = within(deepest, from + side, to - side).map((c) => flipCurve(c, 0));
  return closeEnds(dropSlivers(along), chain, gap);
}

/** The sides of the rhombus at every place where the edge's slope passes theirs: at corners, at steps and on arcs. */
function tents(pieces: readonly Curve[], gap: number, side: number): Chain[] {
  const steep = gap / side;
  const tops: { x: number; y: number }[] = [];
  pieces.forEach((piece, i) => {
    const next = pieces[i + 1];
    if (piece.turn !== 0) tops.push(...placesOfSlope(piece, steep));
    if (next === undefined) return;
    const top = { x: piece.x1, y: Math.max(piece.y1, next.y0) };
    const slopes = [slopeAt(piece, 1), slopeAt(next, 0)];
    const turns = [steep, -steep].some((k) => Math.min(...slopes) <= k && Math.max(...slopes) >= k);
    if (turns || Math.abs(next.y0 - piece.y1) > 1e-9) tops.push(top);
  });
  return tops.map(({ x, y }) => [line(x - side, y, x, y + gap), line(x, y + gap, x + side, y)]);
}

/** The points of an arc at which its slope is ±`steep`. */
function placesOfSlope(c: Curve, steep: number): { x: number; y: number }[] {
  const out = c.r / Math.hypot(1, steep);
  return [c.cx - steep * out, c.cx + steep * out]
    .filter((x) => x > c.x0 && x < c.x1)
    .map((x) => ({ x, y: heightAt(c, x) }));
}

function slopeAt(c: Curve, u: number): number {
  const { dx, dy } = pointAlong(c, u, arcAngle(c));
  return dy / Math.max(Math.abs(dx), 1e-12);
}

/** The part of a chain that runs left to right between two x. */
function within(chain: Chain, from: number, to: number): Curve[] {
  return chain.flatMap((c) => {
    if (c.x1 <= c.x0) return c.x0 > from && c.x0 < to ? [c] : [];
    const [x0, x1] = [Math.max(c.x0, from), Math.min(c.x1, to)];
    return x0 < x1 ? [withEnds(c, x0, heightAt(c, x0), x1, heightAt(c, x1))] : [];
  });
}

/** The chain without the curves of no length that rounding leaves where two of the shapes meet: the next one starts where they did. */
function dropSlivers(chain: Chain): Curve[] {
  const kept: Curve[] = [];
  for (const c of chain) {
    if (Math.hypot(c.x1 - c.x0, c.y1 - c.y0) < SAME_LENGTH) continue;
    const last = kept.at(-1);
    kept.push(last === undefined ? c : withEnds(c, last.x1, last.y1, c.x1, c.y1));
  }
  return kept;
}

/** The chain with upright ends as long as the knife's own, in the knife's own direction. */
function closeEnds(along: readonly Curve[], chain: Chain, gap: number): Chain {
  const [first, last] = [chain[0]!, chain[chain.length - 1]!];
  const rightwards = last.x1 > first.x0;
  const [left, right] = rightwards ? [first.y0, last.y1] : [last.y1, first.y0];
  const [a, b] = [along[0]!, along[along.length - 1]!];
  const curves = [...along];
  if (a.y0 > left - gap + SAME_LENGTH) curves.unshift(line(a.x0, left - gap, a.x0, a.y0));
  if (b.y1 > right - gap + SAME_LENGTH) curves.push(line(b.x1, b.y1, b.x1, right - gap));
  return rightwards ? curves : reverseCurves(curves);
}
