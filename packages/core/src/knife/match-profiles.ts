import { type Chain, findPeak, heightAt, type Piece, splitAtExtremes, splitCurve } from '@fielded/geometry';

/** How deep a cut goes at each distance from the panel's edge: pieces left to right, steps between them; 0 past `end`. `reach` is where the sweep leaves off. */
export interface Depths {
  readonly pieces: readonly Piece[];
  readonly end: number;
  readonly reach: number;
  /** Where a piece starts or ends. */
  readonly corners: readonly number[];
}

/** Places between two corners where two sections are compared. */
const BETWEEN = 8;
const FINE = 64;

/** Corners nearer each other than this are one, mm. */
const SAME_PLACE = 1e-7;

/** Settings tried evenly, and how many of the best are closed in on. */
const TRIED = 60;
const CLOSED_IN = 3;

/** A sweep's edge as depths, without what lies above the face. */
export function depthsOf(swept: Chain): Depths {
  const pieces: Piece[] = [];
  for (const c of splitAtExtremes(swept)) splitCurve(c, pieces);
  const below = pieces
    .map(belowFace)
    .filter((p) => p !== null && p.x1 - p.x0 > SAME_PLACE)
    .sort((p, q) => p!.x0 - q!.x0) as Piece[];
  const corners = [...new Set(below.flatMap((p) => [p.x0, p.x1]))].sort((p, q) => p - q);
  return { pieces: below, end: corners[corners.length - 1] ?? 0, reach: swept[swept.length - 1]!.x1, corners };
}

/** The part of a monotone piece that lies below the face; null where none does. */
function belowFace(p: Piece): Piece | null {
  if (p.y0 >= 0 && p.y1 >= 0) return p;
  if (p.y0 <= 0 && p.y1 <= 0) return null;
  let [from, to] = [p.x0, p.x1];
  for (let i = 0; i < 60; i++) {
    const middle = (from + to) / 2;
    if (heightAt(p, middle) > 0 === p.y0 > 0) from = middle;
    else to = middle;
  }
  return p.y0 > 0 ? { ...p, x1: from, y1: 0 } : { ...p, x0: to, y0: 0 };
}

/**
 * The reach at which a knife's section comes nearest to the one that is wanted, and how far off it then is (formula M1): the least over all
 * reaches of the greatest |Δb| over a ≥ 0.
 *
 * Steps make the deviation jump, so every reach that lays a corner of the one on a corner of the other is tried, and places between
 * evenly; the best are closed in on by golden section. The deviation is good to 0.001 mm, the reach to 1e-6 where a corner decides.
 */
export function leastDeviation(wanted: Depths, knife: Depths): { reach: number; deviation: number } {
  const shifts = new Set<number>();
  for (const a of wanted.corners) for (const k of knife.corners) shifts.add(a - k);
  // From where hardly anything of the knife lies in the panel to where all of it lies deeper in than the wanted section.
  const [least, most] = [0.01 - knife.end, wanted.end];
  for (let i = 0; i <= TRIED; i++) shifts.add(least + ((most - least) * i) / TRIED);
  const best: Setting[] = [];
  const keep = (shift: number) => {
    // What is already worse than those closed in on is not worked out to its end.
    const limit = best[CLOSED_IN - 1]?.deviation ?? Number.POSITIVE_INFINITY;
    const deviation = greatestOff(wanted, knife, shift, BETWEEN, limit);
    if (deviation >= limit) return;
    best.push({ shift, deviation });
    best.sort((p, q) => p.deviation - q.deviation || Math.abs(p.shift) - Math.abs(q.shift));
    best.length = Math.min(best.length, CLOSED_IN);
  };
  for (const shift of shifts) if (knife.end + shift > 0.01) keep(shift);
  const room = (most - least) / TRIED;
  let found = best[0]!;
  if (found.deviation > EXACT)
    for (const { shift } of best) {
      const closer = findPeak((at) => -greatestOff(wanted, knife, at, BETWEEN), shift - room, shift + room, 18);
      const deviation = greatestOff(wanted, knife, closer, BETWEEN);
      if (knife.end + closer > 0.01 && deviation < found.deviation - 1e-9) found = { shift: closer, deviation };
    }
  return { reach: knife.reach + found.shift, deviation: greatestOff(wanted, knife, found.shift, FINE) };
}

interface Setting {
  readonly shift: number;
  readonly deviation: number;
}

/** A deviation that needs no closing in on, mm. */
const EXACT = 1e-9;

/** The greatest difference in depth with the knife's section moved in by `shift`: between neighbouring corners each is one piece. */
function greatestOff(
  wanted: Depths,
  knife: Depths,
  shift: number,
  between: number,
  limit: number = Number.POSITIVE_INFINITY,
): number {
  const moved = knife.corners.map((a) => a + shift);
  const stops = [0, wanted.end, knife.end + shift, ...wanted.corners, ...moved]
    .filter((a) => a >= 0)
    .sort((p, q) => p - q);
  let most = 0;
  for (let i = 1; i < stops.length; i++) {
    const [from, to] = [stops[i - 1]!, stops[i]!];
    // Corners that lie on each other count as one place.
    if (to - from < SAME_PLACE) continue;
    const middle = (from + to) / 2;
    const [want, have] = [pieceOver(wanted, middle), pieceOver(knife, middle - shift)];
    const off = (a: number) =>
      Math.abs((want ? Math.max(0, heightAt(want, a)) : 0) - (have ? Math.max(0, heightAt(have, a - shift)) : 0));
    // Two straight lines are farthest apart at an end.
    const steps = want?.turn || have?.turn ? between : 1;
    for (let k = 0; k <= steps; k++) most = Math.max(most, off(from + ((to - from) * k) / steps));
    if (most >= limit) return most;
  }
  return most;
}

/** The piece over a place; before the first one its level run-out to the edge; none past the end. */
function pieceOver({ pieces, end }: Depths, a: number): Piece | undefined {
  if (a >= end) return undefined;
  let deepest: Piece | undefined;
  for (const p of pieces) if (a > p.x0 && a < p.x1 && (!deepest || heightAt(p, a) > heightAt(deepest, a))) deepest = p;
  // Left of the first piece, heightAt gives its nearer end: level.
  return deepest ?? (pieces[0] && a <= pieces[0].x0 ? pieces[0] : undefined);
}
