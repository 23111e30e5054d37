import { meetCarriers, SAME_LENGTH, shiftCurve } from '@fielded/geometry';
import { leastAlong } from './branch.ts';
import { alongDepth, alongReach, MOVE, outOfSquare } from './moves.ts';
import type { PanelSide, Shifts } from './side.ts';
import { type CutSurface, type DepthPlace, depthAt, leastDepth, leastLeaning } from './surface.ts';

/** Least depth of the front and of the back surface below its face, over an inserted tongue, mm. */
export interface SideDepths {
  front: number;
  back: number;
}

/** The least depth of a side moved by `moves`, 0 to `to` in from the edge, mm; the face itself at the least. */
export function movedDepth(side: PanelSide, moves: ArrayLike<number>, to: number): number {
  const { cuts, surfaces, shifts } = side;
  if (cuts.length === 0) return 0;
  const thicker = moves[MOVE.thickness]!;
  if (cuts.length === 1 && side.falls) {
    const { surface, place, tilt, over } = cuts[0]!;
    const height = moves[place]!;
    const fence = moves[place + 1]!;
    // The usual raise, flat on the table and square to it: where the tongue ends it is thickest.
    if (tilt === 0 && moves[place + 2]! === 0 && to > 2 * SAME_LENGTH)
      return Math.max(0, height + (over ? thicker : 0) + depthAt(surface, to - fence, -1));
  }
  let leans = false;
  for (let i = 0; i < cuts.length; i++) {
    const { place, tilt, over } = cuts[i]!;
    const height = moves[place]!;
    const fence = moves[place + 1]!;
    const square = moves[place + 2]!;
    const flat = tilt === 0;
    shifts.right[i] = flat ? fence : alongReach(tilt, height, fence);
    shifts.down[i] = (flat ? height : alongDepth(tilt, height, fence)) + (over ? thicker : 0);
    shifts.lean[i] = square === 0 ? 0 : -outOfSquare(square);
    if (square !== 0) leans = true;
  }
  const depth = leans ? leastPlace(side, to) : leastSideDepth(surfaces, shifts, to);
  return Math.max(0, depth);
}

/**
 * How far below its face the tongue stays at least, 0 to `to` in from the edge, mm, under all the cuts of one side, none of which
 * leans.
 *
 * Each cut's surface is moved first. Where the cuts overlap the deeper one counts; -Infinity where somewhere no cut reaches.
 * Exact: the least of the deepest lies at an end, where a surface begins, where one is shallowest, or where two surfaces cross.
 */
function leastSideDepth(surfaces: readonly CutSurface[], { right, down }: Shifts, to: number): number {
  if (surfaces.length === 1) return down[0]! + leastDepth(surfaces[0]!, -right[0]!, to - right[0]!);
  let deepestAtEnd = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < surfaces.length; i++) {
    if (!surfaces[i]!.falls) return leastOfDeepest(surfaces, right, down, to);
    const depth = down[i]! + depthAt(surfaces[i]!, to - right[i]!, -1);
    if (depth > deepestAtEnd) deepestAtEnd = depth;
  }
  // All of them rise towards the face: where the tongue ends it is thickest.
  return deepestAtEnd;
}

function leastOfDeepest(
  surfaces: readonly CutSurface[],
  right: ArrayLike<number>,
  down: ArrayLike<number>,
  to: number,
): number {
  const deepest = (x: number, side: -1 | 1) => {
    let depth = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < surfaces.length; i++) {
      const one = down[i]! + depthAt(surfaces[i]!, x - right[i]!, side);
      if (one > depth) depth = one;
    }
    return depth;
  };
  let least = deepest(0, 1);
  const look = (x: number) => {
    // A step that lies at the end itself, to rounding, is not climbed.
    if (x > 0 && x < to - SAME_LENGTH) least = Math.min(least, deepest(x, -1), deepest(x, 1));
  };
  if (to > 0) least = Math.min(least, deepest(to, -1));
  for (let i = 0; i < surfaces.length; i++) {
    const moved = right[i]!;
    // Moved inwards it runs level up to where it begins: there the others may already be shallower.
    const begins = surfaces[i]!.pieces[0];
    if (begins !== undefined) look(begins.x0 + moved);
    // A surface may step through another where neither is shallowest.
    for (const { x1 } of surfaces[i]!.pieces) {
      if (x1 + moved >= to) break;
      look(x1 + moved);
    }
    for (const { x } of surfaces[i]!.shallows) look(x + moved);
    for (let k = 0; k < i; k++) lookAtCrossings(surfaces, right, down, i, k, to, look);
  }
  return least;
}

/** Visits every x up to `to` where the surfaces of two cuts cross, and some where they nearly do: a look too many does no harm. */
function lookAtCrossings(
  surfaces: readonly CutSurface[],
  right: ArrayLike<number>,
  down: ArrayLike<number>,
  i: number,
  k: number,
  to: number,
  look: (x: number) => void,
): void {
  const [ours, theirs] = [surfaces[i]!.pieces, surfaces[k]!.pieces];
  const apart = right[i]! - right[k]!;
  const met: number[] = [];
  // Both run from the edge inwards: theirs that end before ours begins are passed once.
  let first = 0;
  for (const p of ours) {
    if (p.x0 + right[i]! > to) return;
    if (p.x1 + right[i]! < 0) continue;
    const moved = shiftCurve(p, apart, down[i]! - down[k]!);
    while (first < theirs.length && theirs[first]!.x1 < moved.x0) first++;
    for (let n = first; n < theirs.length && theirs[n]!.x0 <= moved.x1; n++) {
      const q = theirs[n]!;
      met.length = 0;
      meetCarriers(moved, q, met);
      const [from, till] = [Math.max(moved.x0, q.x0) - SAME_LENGTH, Math.min(moved.x1, q.x1) + SAME_LENGTH];
      for (let m = 0; m < met.length; m += 2) if (met[m]! >= from && met[m]! <= till) look(met[m]! + right[k]!);
    }
  }
}

/** Reused for every search of a least depth: making one each time would take longer than the search. */
const spot: DepthPlace = { x: 0, depth: 0 };

/** The least depth of a cut over a ≤ x ≤ b in from the panel's edge, mm, and where, in `spot`. */
function leastOfCut(surface: CutSurface, { right, down, lean }: Shifts, i: number, a: number, b: number): number {
  const moved = right[i]!;
  leastLeaning(surface, a - moved, b - moved, lean[i]!, spot);
  spot.x += moved;
  spot.depth += down[i]! + lean[i]! * moved;
  return spot.depth;
}

/** Depths are found to this, mm, where leaning surfaces cross. */
const CLOSE = 1e-9;
/** Parts of the tongue that are looked at for that: some forty for each place that may be the one. */
const MOST_PARTS = 2000;

/**
 * The least depth of a side over 0 … `to`, moved by its `shifts`, mm, not bounded by the face; where it is stands in `side.found`.
 * Searched for, since leaning arcs cross in no closed form, and no further than the first place with no more than `enough`.
 */
export function leastPlace(
  { surfaces, shifts, found }: PanelSide,
  to: number,
  enough: number = Number.NEGATIVE_INFINITY,
): number {
  if (surfaces.length === 1) {
    leastOfCut(surfaces[0]!, shifts, 0, 0, to);
    found.x = spot.x;
    found.depth = spot.depth;
    return found.depth;
  }
  const deepest = (a: number, b: number) => {
    // A step that stands where the tongue ends is not climbed.
    const from = a === to ? Math.max(0, to - 3 * SAME_LENGTH) : a;
    let depth = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < surfaces.length; i++) depth = Math.max(depth, leastOfCut(surfaces[i]!, shifts, i, from, b));
    return depth;
  };
  const { x, value } = leastAlong(deepest, 0, to, CLOSE, enough, { parts: MOST_PARTS });
  found.x = x;
  found.depth = value;
  return value;
}
