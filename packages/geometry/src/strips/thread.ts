import { type Chain, type Curve, flipCurve } from '../curve/curve.ts';
import { heightAt, isPiece, type Piece, splitCurve } from '../curve/piece.ts';
import { STRIP_WIDTH } from '../curve/tolerance.ts';

/**
 * A stretch of a boundary with one height at every x: pieces joined end to end from left to right, those of `pieces` from place
 * `first` up to, but not including, place `end`. It reaches from `x0` to `x1`, and its heights lie between `low` and `high`, mm. `of` is
 * the number of the region that it bounds, `id` its own place in the list of threads.
 *
 * Where `depthFrom` is a height, mm, the pieces hold depths below it, as those of a front cut do below the panel's face. The thread
 * mirrors them, so that a long profile need not be copied to be placed.
 */
export interface Thread {
  readonly pieces: readonly Piece[];
  readonly first: number;
  readonly end: number;
  readonly depthFrom: number | null;
  readonly x0: number;
  readonly x1: number;
  readonly low: number;
  readonly high: number;
  readonly of: number;
  readonly id: number;
}

/**
 * Splits a chain into threads and appends them to `out`; a new thread begins wherever the chain turns back in x or has an upright
 * line. For a chain that holds depths, `depthFrom` is the height that they are measured down from.
 *
 * Upright lines belong to no thread: they have no width, and the threads to their left and right hold the heights of their ends.
 */
export function threadChain(chain: Chain, of: number, out: Thread[], depthFrom: number | null = null): void {
  let run: Piece[] = [];
  let rightwards = true;
  const stretch: Piece[] = [];
  for (let k = 0; k < chain.length; k++) {
    if (rightwards) {
      // As far as the chain's own curves are pieces, running to the right, they are used as they are: a long profile is not copied.
      const end = endOfPlain(chain, k);
      if (run.length === 0 && endsThread(chain, end)) {
        if (end > k) out.push(threadOf(chain, k, end, depthFrom, of, out.length));
      } else for (; k < end; k++) run.push(chain[k]!);
      if (end === chain.length) break;
      k = end;
    }
    const c = chain[k]!;
    while (stretch.length > 0) stretch.pop();
    splitCurve(c, stretch);
    // The pieces of an arc come clockwise: put them in the chain's direction.
    if (c.turn > 0) stretch.reverse();
    if (stretch.length === 0) run = closeRun(run, rightwards, depthFrom, of, out);
    for (const piece of stretch) {
      // Is it narrower than any strip? Then it is upright but for rounding.
      if (piece.x1 - piece.x0 <= STRIP_WIDTH) {
        run = closeRun(run, rightwards, depthFrom, of, out);
        continue;
      }
      const goesRight = runsRight(c, piece);
      if (goesRight !== rightwards) run = closeRun(run, rightwards, depthFrom, of, out);
      rightwards = goesRight;
      run.push(piece);
    }
  }
  closeRun(run, rightwards, depthFrom, of, out);
}

/** The first place from `from` on whose curve is not a piece as it is, or is no wider than 1e-12 mm; the chain's length where there is none. */
function endOfPlain(chain: Chain, from: number): number {
  let end = from;
  while (end < chain.length) {
    const c = chain[end]!;
    if (!(c.x1 - c.x0 > STRIP_WIDTH && isPiece(c))) break;
    end++;
  }
  return end;
}

/** Whether a thread that runs to the right ends before the place that `endOfPlain` found: the chain ends there, or goes on with a line, which then is upright or turns back. */
function endsThread(chain: Chain, place: number): boolean {
  return chain[place] === undefined || chain[place].turn === 0;
}

/** Makes a thread of a run of pieces, if it holds any, and returns an empty run for the next. */
function closeRun(run: Piece[], rightwards: boolean, depthFrom: number | null, of: number, out: Thread[]): Piece[] {
  if (run.length === 0) return run;
  out.push(threadOf(rightwards ? run : run.reverse(), 0, run.length, depthFrom, of, out.length));
  return [];
}

/** The thread of the pieces from place `from` up to, but not including, place `end`. */
function threadOf(
  pieces: readonly Piece[],
  from: number,
  end: number,
  depthFrom: number | null,
  of: number,
  id: number,
): Thread {
  const { x0, y0 } = pieces[from]!;
  let least = y0;
  let most = y0;
  // Its least and greatest height are at an end of a piece, or at an arc's lowest or highest point where that lies within.
  for (let k = from; k < end; k++) {
    const p = pieces[k]!;
    const { y1 } = p;
    if (y1 < least) least = y1;
    if (y1 > most) most = y1;
    if (p.turn === 0 || p.x0 >= p.cx || p.cx >= p.x1) continue;
    if (p.turn > 0) least = Math.min(least, p.cy - p.r);
    else most = Math.max(most, p.cy + p.r);
  }
  const low = depthFrom === null ? least : depthFrom - most;
  const high = depthFrom === null ? most : depthFrom - least;
  return { pieces, first: from, end, depthFrom, x0, x1: pieces[end - 1]!.x1, low, high, of, id };
}

/** Whether a chain runs along a piece of one of its curves from left to right. An arc does clockwise on the upper half, anticlockwise on the lower. */
function runsRight(c: Curve, piece: Piece): boolean {
  return c.turn === 0 ? c.x0 < c.x1 : c.turn === piece.turn;
}

/** A level thread at height `y` from x0 to x1, such as a face of the stock. */
export function levelThread(x0: number, x1: number, y: number, of: number, id: number): Thread {
  const piece: Piece = { x0, y0: y, x1, y1: y, cx: 0, cy: 0, r: 0, turn: 0 };
  return { pieces: [piece], first: 0, end: 1, depthFrom: null, x0, x1, low: y, high: y, of, id };
}

/** The place in `pieces` of the piece of a thread that spans x: the right one where two meet, the nearest one beyond the thread's ends. By bisection. */
export function placeAt({ pieces, first, end }: Thread, x: number): number {
  let from = first;
  let to = end - 1;
  while (from < to) {
    const middle = (from + to + 1) >> 1;
    if (pieces[middle]!.x0 <= x) from = middle;
    else to = middle - 1;
  }
  return from;
}

/** The place of the last piece that starts before x1, but not before `first`: with `first = placeAt(t, x0)` the last piece over [x0, x1]. */
export function lastPlace(t: Thread, first: number, x1: number): number {
  const last = placeAt(t, x1);
  return last > first && t.pieces[last]!.x0 >= x1 ? last - 1 : last;
}

/** Height of a thread at x, mm; beyond its ends the height of the nearer end. */
export function threadHeight(t: Thread, x: number): number {
  const height = heightAt(t.pieces[placeAt(t, x)]!, x);
  return t.depthFrom === null ? height : t.depthFrom - height;
}

/** The piece at a place of a thread, its depths turned into heights. */
export function pieceAt({ pieces, depthFrom }: Thread, k: number): Piece {
  return depthFrom === null ? pieces[k]! : flipCurve(pieces[k]!, depthFrom);
}

/**
 * The piece at place `k` of a thread over [x0, x1] as a curve, its depths turned into heights, from right to left if `leftwards`. The
 * same as a share of `sharesOf`, cut, placed and reversed in one step.
 */
export function curveOver(t: Thread, k: number, x0: number, x1: number, leftwards: boolean): Curve {
  const p = t.pieces[k]!;
  const { depthFrom } = t;
  const left = Math.max(p.x0, x0);
  const right = Math.min(p.x1, x1);
  const from = leftwards ? right : left;
  const to = leftwards ? left : right;
  const y0 = heightAt(p, from);
  const y1 = heightAt(p, to);
  const bent = p.turn !== 0;
  // Reversing a curve turns an arc the other way, and so does mirroring it.
  const turned = bent && leftwards !== (depthFrom !== null);
  return {
    x0: from,
    y0: depthFrom === null ? y0 : depthFrom - y0,
    x1: to,
    y1: depthFrom === null ? y1 : depthFrom - y1,
    cx: p.cx,
    cy: depthFrom === null || !bent ? p.cy : depthFrom - p.cy,
    r: p.r,
    turn: turned ? (-p.turn as -1 | 1) : p.turn,
  };
}

/** The part of a piece over [x0, x1]. */
export interface Share {
  readonly piece: Piece;
  readonly x0: number;
  readonly x1: number;
}

/** Appends to `shares` the pieces of a thread over [x0, x1], from left to right; the first and the last are cut there. */
export function sharesOf(t: Thread, x0: number, x1: number, shares: Share[] = []): Share[] {
  for (let k = placeAt(t, x0); k < t.end; k++) {
    if (t.pieces[k]!.x0 >= x1) break;
    const piece = pieceAt(t, k);
    shares.push({ piece, x0: Math.max(piece.x0, x0), x1: Math.min(piece.x1, x1) });
  }
  return shares;
}
