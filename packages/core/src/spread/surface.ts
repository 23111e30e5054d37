/**
 * How deep one cut goes at each distance in from the edge: the edge of what it clears, ready to be moved and read fast.
 *
 * Cut coordinates: x in from the edge, depth below the worked face, mm. Level beyond its first point; no cut beyond `end`.
 */
export interface CutSurface {
  readonly pieces: readonly Piece[];
  readonly end: number;
  /** x and depth of every place that is shallower than its surroundings, ends of pieces included, ascending in x. */
  readonly shallows: readonly { readonly x: number; readonly depth: number }[];
  /** Whether it nowhere gets deeper on the way in, as every raise does not. */
  readonly falls: boolean;
}

/**
 * The surface that a cut's edge makes, a chain that runs forward in x but for upright steps.
 *
 * Upright steps are kept as the jump between the pieces at either side.
 */
export function cutSurface(edge: Chain): CutSurface {
  const pieces: Piece[] = [];
  for (const curve of edge) splitCurve(curve, pieces);
  pieces.sort((p, q) => p.x0 - q.x0);
  return { pieces, end: pieces.at(-1)?.x1 ?? 0, shallows: findShallows(pieces), falls: pieces.every(isFalling) };
}

/** Whether a piece, and the step to it, goes level or towards the face. */
function isFalling(p: Piece, index: number, pieces: readonly Piece[]): boolean {
  const before = pieces[index - 1];
  if (before !== undefined && p.y0 > before.y1) return false;
  return slopeAt(p, 0) <= 0 && slopeAt(p, 1) <= 0;
}

/**
 * Depth of a surface at x, mm, as met coming from the left (`side` -1) or from the right (+1): they differ at a step.
 * -Infinity where the cut does not reach.
 */
export function depthAt(surface: CutSurface, x: number, side: -1 | 1): number {
  const { pieces } = surface;
  // A hair (1e-9) is given so that an insertion that ends at a step does not climb it by rounding.
  const place = x + side * SAME_LENGTH;
  if (place > surface.end) return Number.NEGATIVE_INFINITY;
  for (let i = 0; i < pieces.length; i++) if (place <= pieces[i]!.x1) return heightAt(pieces[i]!, x);
  return Number.NEGATIVE_INFINITY;
}

/**
 * The least depth of a surface over from ≤ x ≤ to, mm: what holds the tongue's face furthest out. Steps at the very
 * ends are not climbed. -Infinity where the cut ends before `to`.
 */
export function leastDepth(surface: CutSurface, from: number, to: number): number {
  if (to - from <= 2 * SAME_LENGTH) return depthAt(surface, from, 1);
  let least = Math.min(depthAt(surface, from, 1), depthAt(surface, to, -1));
  const { shallows } = surface;
  for (let i = 0; i < shallows.length; i++) {
    const place = shallows[i]!;
    if (place.x > from && place.x < to && place.depth < least) least = place.depth;
  }
  return least;
}

/** A depth and where it is. */
export interface DepthPlace {
  x: number;
  depth: number;
}

/**
 * The least of depth + slope·x over from ≤ x ≤ to, mm, and where, written into `spot`: what a surface that leans by `slope` keeps at
 * least. Exact: on an arc it lies at an end or where the arc leans as much the other way. -Infinity where the cut ends before `to`.
 */
export function leastLeaning(surface: CutSurface, from: number, to: number, slope: number, spot: DepthPlace): void {
  spot.x = from;
  // The two ends first, then every piece between them.
  spot.depth = depthAt(surface, from, 1) + slope * from;
  if (to - from <= 2 * SAME_LENGTH) return;
  takeLess(spot, to, depthAt(surface, to, -1) + slope * to);
  const { pieces } = surface;
  const leaning = Math.hypot(1, slope);
  for (let i = 0; i < pieces.length; i++) {
    const p = pieces[i]!;
    if (p.x1 <= from) continue;
    if (p.x0 >= to) break;
    if (p.x0 > from) takeLess(spot, p.x0, p.y0 + slope * p.x0);
    if (p.x1 < to) takeLess(spot, p.x1, p.y1 + slope * p.x1);
    // A hollow may have its least inside: where it leans as much the other way.
    if (p.turn <= 0) continue;
    const x = p.cx - (p.r * slope) / leaning;
    if (x > from && x > p.x0 && x < to && x < p.x1) takeLess(spot, x, p.cy - p.r / leaning + slope * x);
  }
}

/** Keeps the lesser of two depths. */
function takeLess(spot: DepthPlace, x: number, depth: number): void {
  if (!(depth < spot.depth)) return;
  spot.x = x;
  spot.depth = depth;
}

/** The most of depth + slope·x over from ≤ x ≤ to, mm, both sides of every step; -Infinity where the cut ends before `from`. */
export function mostLeaning(surface: CutSurface, from: number, to: number, slope: number): number {
  const { pieces, end } = surface;
  if (from - SAME_LENGTH > end || pieces.length === 0) return Number.NEGATIVE_INFINITY;
  const till = Math.min(to, end);
  let most = Math.max(depthAt(surface, from, -1) + slope * from, depthAt(surface, till, -1) + slope * till);
  const leaning = Math.hypot(1, slope);
  for (let i = 0; i < pieces.length; i++) {
    const p = pieces[i]!;
    if (p.x1 < from) continue;
    if (p.x0 > till) break;
    if (p.x0 >= from) most = Math.max(most, p.y0 + slope * p.x0);
    if (p.x1 <= till) most = Math.max(most, p.y1 + slope * p.x1);
    // A round may have its most inside.
    if (p.turn >= 0) continue;
    const x = p.cx + (p.r * slope) / leaning;
    if (x > from && x > p.x0 && x < till && x < p.x1) most = Math.max(most, p.cy + p.r / leaning + slope * x);
  }
  return most;
}

/** Ends and crests of pieces that are no deeper than what lies just beside them; the outer ends are not among them. */
function findShallows(pieces: readonly Piece[]): { x: number; depth: number }[] {
  const found: { x: number; depth: number }[] = [];
  for (let i = 0; i < pieces.length; i++) {
    const p = pieces[i]!;
    // The lowest point of an arc's lower half: the shallowest of a hollow seen from the face.
    if (p.turn > 0 && p.x0 < p.cx && p.cx < p.x1) found.push({ x: p.cx, depth: p.cy - p.r });
    const next = pieces[i + 1];
    if (next === undefined) continue;
    // Where two pieces meet: does it get deeper to either side?
    const depth = Math.min(p.y1, next.y0);
    const fallsBefore = p.y1 > depth || slopeAt(p, 1) <= 0;
    const risesAfter = next.y0 > depth || slopeAt(next, 0) >= 0;
    if (fallsBefore && risesAfter) found.push({ x: p.x1, depth });
  }
  return found;
}

/** The sign of a piece's slope in depth at its start (0) or its end (1). */
function slopeAt(p: Piece, at: 0 | 1): number {
  if (p.turn === 0) return p.y1 - p.y0;
  // On the lower half (turn +1) depth grows with x to the right of the centre.
  return p.turn * ((at === 0 ? p.x0 : p.x1) - p.cx);
}

import { type Chain, heightAt, type Piece, SAME_LENGTH, splitCurve } from '@fielded/geometry';
