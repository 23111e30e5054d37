import { type Chain, findPeak, heightAt, type Piece, splitAtExtremes, splitCurve, withEnds } from '@fielded/geometry';

/** The depth of a cut at each distance from the panel's edge, mm: pieces from left to right with steps between them, and 0 beyond `end`. `reach` is where the sweep ends. */
export interface Depths {
  readonly pieces: readonly Piece[];
  readonly end: number;
  readonly reach: number;
  /** The x at which a piece starts or ends. */
  readonly corners: readonly number[];
  /** The deepest piece from each corner to the next; undefined where none lies there. */
  readonly spans: readonly (Piece | undefined)[];
}

/** Places between two corners at which two sections are compared. */
const BETWEEN = 8;
const FINE = 64;

/** Corners nearer each other than this are one, mm. */
const SAME_PLACE = 1e-7;

/** The number of evenly spaced settings that are tried, and of the best ones that are refined. */
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

/** The part of a monotonic piece that lies below the face; null where none does. */
function belowFace(p: Piece): Piece | null {
  if (p.y0 >= 0 && p.y1 >= 0) return p;
  if (p.y0 <= 0 && p.y1 <= 0) return null;
  let [from, to] = [p.x0, p.x1];
  for (let i = 0; i < 60; i++) {
    const middle = (from + to) / 2;
    if (heightAt(p, middle) > 0 === p.y0 > 0) from = middle;
    else to = middle;
  }
  return p.y0 > 0 ? withEnds(p, p.x0, p.y0, from, 0) : withEnds(p, to, 0, p.x1, p.y1);
}

/**
 * The reach at which a knife's section comes nearest to the one wanted, and its deviation there, mm (formula M1): the least, over all
 * reaches, of the greatest |Δb| over a ≥ 0.
 *
 * The deviation jumps at steps, so every reach is tried at which a corner of one section lies on a corner of the other, and evenly
 * spaced ones besides; the best are refined by golden section. Accurate to 0.001 mm in the deviation, and to 1e-6 mm in the reach
 * where a corner decides it.
 */
export function leastDeviation(wanted: Depths, knife: Depths): { reach: number; deviation: number } {
  const shifts = new Set<number>();
  for (const a of wanted.corners) for (const k of knife.corners) shifts.add(a - k);
  // The range: from where the knife hardly touches the panel to where all of it lies further in than the section wanted.
  const [least, most] = [0.01 - knife.end, wanted.end];
  for (let i = 0; i <= TRIED; i++) shifts.add(least + ((most - least) * i) / TRIED);
  const best: Setting[] = [];
  const keep = (shift: number) => {
    // A reach that is already worse than those to be refined is not computed to its end.
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

/** A deviation no greater than this, mm, needs no refining. */
const EXACT = 1e-9;

/**
 * The greatest difference in depth, mm, with the knife's section moved in by `shift`. Between neighbouring corners both sections are one
 * piece each, so they are followed together from corner to corner; a difference that reaches `limit` ends the search.
 */
function greatestOff(
  wanted: Depths,
  knife: Depths,
  shift: number,
  between: number,
  limit: number = Number.POSITIVE_INFINITY,
): number {
  const [mine, other] = [wanted.corners, knife.corners];
  // Find the first corner of each that lies in the panel.
  let [i, k] = [0, 0];
  while (i < mine.length && mine[i]! <= 0) i++;
  while (k < other.length && other[k]! + shift <= 0) k++;
  let from = 0;
  let most = 0;
  while (i < mine.length || k < other.length) {
    const a = i < mine.length ? mine[i]! : Number.POSITIVE_INFINITY;
    const b = k < other.length ? other[k]! + shift : Number.POSITIVE_INFINITY;
    const to = Math.min(a, b);
    // Corners that coincide count as one.
    if (to - from >= SAME_PLACE) {
      most = Math.max(most, offBetween(pieceBefore(wanted, i), pieceBefore(knife, k), shift, from, to, between, limit));
      if (most >= limit) return most;
    }
    if (a === to) i++;
    if (b === to) k++;
    from = to;
  }
  return most;
}

/** The greatest difference in depth of two pieces between two x, the second piece moved in by `shift`, mm, or the first that reaches `limit`. */
function offBetween(
  want: Piece | undefined,
  have: Piece | undefined,
  shift: number,
  from: number,
  to: number,
  between: number,
  limit: number,
): number {
  // Two lines are farthest apart at an end.
  const steps = want?.turn || have?.turn ? between : 1;
  let most = 0;
  for (let n = 0; n <= steps && most < limit; n++) {
    const a = from + ((to - from) * n) / steps;
    const depth = want ? Math.max(0, heightAt(want, a)) : 0;
    const cut = have ? Math.max(0, heightAt(have, a - shift)) : 0;
    most = Math.max(most, Math.abs(depth - cut));
  }
  return most;
}

/** The piece that ends at a corner, given by its number, or passes it: before the first corner the level run-out to the edge, beyond the last none. */
function pieceBefore({ pieces, corners, spans }: Depths, corner: number): Piece | undefined {
  if (corner >= corners.length) return undefined;
  // To the left of the first piece `heightAt` gives the height of its left end, which is the run-out.
  return corner === 0 ? pieces[0] : spans[corner - 1];
}

function deepestAt(pieces: readonly Piece[], a: number): Piece | undefined {
  let deepest: Piece | undefined;
  for (const p of pieces) if (a > p.x0 && a < p.x1 && (!deepest || heightAt(p, a) > heightAt(deepest, a))) deepest = p;
  return deepest;
}
