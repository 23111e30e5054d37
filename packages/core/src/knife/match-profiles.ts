import { type Chain, findPeak, heightAt, type Piece, splitAtExtremes, splitCurve } from '@fielded/geometry';

/** How deep a cut goes at each distance from the panel's edge: pieces left to right, steps between them; 0 past `end`. `reach` is where the sweep leaves off. */
export interface Depths {
  readonly pieces: readonly Piece[];
  readonly end: number;
  readonly reach: number;
  /** Where a piece starts or ends. */
  readonly corners: readonly number[];
  /** The deepest piece from each corner to the next; undefined where none lies there. */
  readonly spans: readonly (Piece | undefined)[];
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
  const spans = corners.slice(1).map((to, i) => deepestAt(below, (corners[i]! + to) / 2));
  return { pieces: below, end: corners[corners.length - 1] ?? 0, reach: swept[swept.length - 1]!.x1, corners, spans };
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

/**
 * The greatest difference in depth with the knife's section moved in by `shift`: between neighbouring corners each is one piece, so both
 * are walked along together. What reaches `limit` is not followed to its end.
 */
function greatestOff(
  wanted: Depths,
  knife: Depths,
  shift: number,
  between: number,
  limit: number = Number.POSITIVE_INFINITY,
): number {
  const [mine, other] = [wanted.corners, knife.corners];
  // The next corner of each that lies in the panel.
  let [i, k] = [0, 0];
  while (i < mine.length && mine[i]! <= 0) i++;
  while (k < other.length && other[k]! + shift <= 0) k++;
  let from = 0;
  let most = 0;
  while (i < mine.length || k < other.length) {
    const [a, b] = [
      mine[i] ?? Number.POSITIVE_INFINITY,
      k < other.length ? other[k]! + shift : Number.POSITIVE_INFINITY,
    ];
    const to = Math.min(a, b);
    // Corners that lie on each other count as one place.
    if (to - from >= SAME_PLACE) {
      most = Math.max(most, offBetween(pieceBefore(wanted, i), pieceBefore(knife, k), shift, from, to, between));
      if (most >= limit) return most;
    }
    if (a === to) i++;
    if (b === to) k++;
    from = to;
  }
  return most;
}

/** The greatest difference of two pieces from one place to another, the second moved in by `shift`. */
function offBetween(
  want: Piece | undefined,
  have: Piece | undefined,
  shift: number,
  from: number,
  to: number,
  between: number,
): number {
  // Two straight lines are farthest apart at an end.
  const steps = want?.turn || have?.turn ? between : 1;
  let most = 0;
  for (let n = 0; n <= steps; n++) {
    const a = from + ((to - from) * n) / steps;
    const depth = want ? Math.max(0, heightAt(want, a)) : 0;
    const cut = have ? Math.max(0, heightAt(have, a - shift)) : 0;
    most = Math.max(most, Math.abs(depth - cut));
  }
  return most;
}

/** The piece that ends at or passes a corner by its number: before the first one its level run-out to the edge, none past the last. */
function pieceBefore({ pieces, corners, spans }: Depths, corner: number): Piece | undefined {
  if (corner >= corners.length) return undefined;
  // Left of the first piece, heightAt gives its nearer end: level.
  return corner === 0 ? pieces[0] : spans[corner - 1];
}

function deepestAt(pieces: readonly Piece[], a: number): Piece | undefined {
  let deepest: Piece | undefined;
  for (const p of pieces) if (a > p.x0 && a < p.x1 && (!deepest || heightAt(p, a) > heightAt(deepest, a))) deepest = p;
  return deepest;
}
