import { SAME_LENGTH } from '@fielded/geometry';
import { greatest, leastAlong, type PartsLeft } from './branch.ts';
import { outOfSquare } from './moves.ts';
import { deepestMoves, type MoveStretch } from './reach-of-moves.ts';
import type { PanelSide } from './side.ts';
import { leastPlace } from './side-depth.ts';
import { type DepthPlace, depthAt, leastLeaning, mostLeaning } from './surface.ts';

/** A cut at the ends of what it may be off by: how it goes deeper where it is moved to, and how it leans. */
interface Ranged {
  readonly stretches: readonly MoveStretch[];
  readonly from: number;
  readonly to: number;
  /** How much deeper it gets for each mm in from the panel's edge. */
  readonly lean: number;
  /** What the stock alone makes it deeper. */
  readonly down: number;
}

/** Depths are found to this, mm. */
const CLOSE = 3e-8;

const spot: DepthPlace = { x: 0, depth: 0 };

/**
 * The least (`way` -1) or most (+1) that a side's least depth over 0 … `into` can be, mm, with every one of its cuts anywhere within
 * its ± (`off`, by place in a list of moves); -Infinity where a cut may end before that. Square counts at its ends: the further out,
 * the shallower is every place.
 *
 * `thicker` is what the stock is thicker, which the cuts run over follow.
 */
export function extremeDepth(
  side: PanelSide,
  off: ArrayLike<number>,
  into: number,
  thicker: number,
  way: -1 | 1,
  effort: PartsLeft,
): number {
  if (side.cuts.length === 0) return Number.NEGATIVE_INFINITY;
  const ranged = side.cuts.map(({ place, tilt, over }): Ranged => {
    const stretches = deepestMoves(tilt, off[place]!, off[place + 1]!, way);
    return {
      stretches,
      from: stretches[0]!.from,
      to: stretches.at(-1)!.to,
      lean: way * outOfSquare(off[place + 2]!),
      down: over ? thicker : 0,
    };
  });
  return way < 0 ? leastOfAll(side, ranged, into, effort) : mostOfAll(side, ranged, into, effort);
}

/**
 * The least: the cuts move each for itself, so at every place each is as shallow as its own moves make it, and of the deepest of them
 * the least over all places counts.
 */
function leastOfAll(side: PanelSide, ranged: readonly Ranged[], into: number, effort: PartsLeft): number {
  const shallowest = (a: number, b: number) =>
    ranged.reduce(
      (deepest, cut, i) => Math.max(deepest, leastBetween(side, cut, i, a, b, into)),
      Number.NEGATIVE_INFINITY,
    );
  if (side.falls && ranged.every(({ lean }) => lean <= 0)) return shallowest(into, into);
  return leastAlong(shallowest, 0, into, CLOSE, Number.NEGATIVE_INFINITY, effort).value;
}

/** No more than the depth of one cut anywhere over a ≤ x ≤ b, however it is moved; what it is at its least where a = b. */
function leastBetween(side: PanelSide, cut: Ranged, i: number, a: number, b: number, into: number): number {
  const surface = side.surfaces[i]!;
  let least = Number.POSITIVE_INFINITY;
  for (const { from, to, down, slope } of cut.stretches) {
    const [low, high] = [a - to, b - from];
    const leastOf = (leaning: number) => {
      // A step that stands where the tongue ends is not climbed.
      if (high - low <= 2 * SAME_LENGTH) return depthAt(surface, low, a >= into ? -1 : 1) + leaning * low;
      leastLeaning(surface, low, high, leaning, spot);
      return spot.depth;
    };
    const steep = slope + cut.lean;
    const together = leastOf(-slope) + down - slope * from + steep * (steep > 0 ? a : b);
    // Each at its least for itself is no less either, and closer where the surface is level.
    const apart =
      slope === 0 ? together : leastOf(0) + down + Math.min(0, slope * (to - from)) + cut.lean * (cut.lean > 0 ? a : b);
    least = Math.min(least, Math.max(together, a < b ? apart : together));
  }
  return least + cut.down;
}

/** The most: over all places that the cuts can be moved to, each as deep there as it can be. */
function mostOfAll(side: PanelSide, ranged: readonly Ranged[], into: number, effort: PartsLeft): number {
  // A surface that rises towards the face is deeper at every place the further in it is moved, unless that lifts it.
  const low = ranged.map(({ from, to, stretches }, i) =>
    side.surfaces[i]!.falls && stretches.every(({ slope }) => slope >= 0) ? to : from,
  );
  const high = ranged.map(({ to }) => to);
  // Where every surface rises towards the face the tongue's end counts, and there each cut for itself.
  if (side.falls && ranged.every(({ lean }) => lean <= 0)) return mostOfCuts(side, ranged, into, low, high);
  const at = (rights: readonly number[], best?: number) => {
    setCuts(side, ranged, rights);
    return leastPlace(side, into, best);
  };
  const look = (from: readonly number[], to: readonly number[], best: number) => ({
    value: at(
      from.map((a, i) => (a + to[i]!) / 2),
      best,
    ),
    bound: boundOfMost(side, ranged, into, from, to),
  });
  return greatest({ low, high, at: (place) => at(place), look }, CLOSE, effort);
}

/** Sets a side's cuts as deep as they can be where they are moved to. */
function setCuts(side: PanelSide, ranged: readonly Ranged[], rights: readonly number[]): void {
  const { right, down, lean } = side.shifts;
  ranged.forEach((cut, i) => {
    right[i] = rights[i]!;
    down[i] = cut.down + downAt(cut, rights[i]!);
    lean[i] = cut.lean;
  });
}

function downAt({ stretches }: Ranged, right: number): number {
  const { from, down, slope } = stretches.find(({ to }) => right <= to) ?? stretches.at(-1)!;
  return down + slope * (right - from);
}

/**
 * No less than the least depth is with the cuts moved anywhere `from` … `to`: the least over a place is no more than the depth at any
 * one place. Looked at are the tip, the mouth, and the place where it was least with the cuts in the middle: as a place of the panel,
 * and as one of each cut that moves with it.
 */
function boundOfMost(
  side: PanelSide,
  ranged: readonly Ranged[],
  into: number,
  from: readonly number[],
  to: readonly number[],
): number {
  const fixed = (x: number) => mostOfCuts(side, ranged, x, from, to);
  const found = side.found.x;
  let bound = Math.min(fixed(0), fixed(into), fixed(found));
  for (let k = 0; k < ranged.length; k++) {
    const of = found - (from[k]! + to[k]!) / 2;
    const [a, b] = [of + from[k]!, of + to[k]!];
    if (!(a > 0 && b < into)) continue;
    // The cut's own place moves with it; the others are met anywhere that takes it.
    const own = mostOfPlace(side, ranged[k]!, k, of, from[k]!, to[k]!);
    const others = ranged.reduce(
      (most, cut, i) => (i === k ? most : Math.max(most, mostBetween(side, cut, i, a, b, from[i]!, to[i]!))),
      own,
    );
    bound = Math.min(bound, others);
  }
  return bound;
}

/** The most that the deepest of the cuts can be at x, each moved `from` … `to` in. */
function mostOfCuts(
  side: PanelSide,
  ranged: readonly Ranged[],
  x: number,
  from: readonly number[],
  to: readonly number[],
): number {
  return ranged.reduce(
    (most, cut, i) => Math.max(most, mostBetween(side, cut, i, x, x, from[i]!, to[i]!)),
    Number.NEGATIVE_INFINITY,
  );
}

/** The most that one cut's depth over a ≤ x ≤ b can be, moved `from` … `to` in. */
function mostBetween(side: PanelSide, cut: Ranged, i: number, a: number, b: number, from: number, to: number): number {
  let most = Number.NEGATIVE_INFINITY;
  for (const stretch of cut.stretches) {
    const low = Math.max(from, stretch.from);
    const high = Math.min(to, stretch.to);
    if (low > high) continue;
    const { down, slope } = stretch;
    const along = (slope + cut.lean) * (slope + cut.lean > 0 ? b : a);
    const depth = mostLeaning(side.surfaces[i]!, a - high, b - low, -slope);
    most = Math.max(most, depth + down - slope * stretch.from + along);
  }
  return most + cut.down;
}

/** The most that the depth at a place of a cut, which moves with it, can be; at a step the shallower side counts. */
function mostOfPlace(side: PanelSide, cut: Ranged, i: number, of: number, from: number, to: number): number {
  const surface = side.surfaces[i]!;
  const depth = Math.min(depthAt(surface, of, -1), depthAt(surface, of, 1));
  let most = Number.NEGATIVE_INFINITY;
  for (const right of [from, to, ...cut.stretches.map((stretch) => stretch.to)]) {
    if (right < from || right > to) continue;
    most = Math.max(most, downAt(cut, right) + cut.lean * (of + right));
  }
  return depth + most + cut.down;
}
