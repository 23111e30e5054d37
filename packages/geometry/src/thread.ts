import { type Chain, type Curve, flipCurve } from './curve.ts';
import { heightAt, highOf, isPiece, lowOf, type Piece, splitCurve } from './piece.ts';
import { STRIP_WIDTH } from './tolerance.ts';

/**
 * Pieces joined end to end, left to right: a stretch of boundary with one height at every x, however many lines and arcs
 * it is made of. `of` is the number of the region it bounds, `id` its own place in the list it was made into; `low` and
 * `high` bound its height, mm.
 *
 * Where `depthFrom` is a height, mm, the pieces hold depths below it, as a front cut's do below the panel's face: the
 * thread mirrors them, so that a long profile need not be copied to be placed.
 */
export interface Thread {
  readonly pieces: readonly Piece[];
  readonly depthFrom: number | null;
  readonly x0: number;
  readonly x1: number;
  readonly low: number;
  readonly high: number;
  readonly of: number;
  readonly id: number;
}

/**
 * Takes a chain apart into threads, appended to `out`: a new one wherever the chain turns back in x or steps upright. A
 * chain that holds depths is given the height they are measured down from.
 *
 * Upright lines belong to no thread: they have no width, and the threads on either side of them know the step.
 */
export function threadChain(chain: Chain, of: number, out: Thread[], depthFrom: number | null = null): void {
  let run: Piece[] = [];
  let rightwards = true;
  const close = () => {
    if (run.length > 0) out.push(threadOf(rightwards ? run : run.reverse(), depthFrom, of, out.length));
    run = [];
  };
  const stretch: Piece[] = [];
  for (const c of chain) {
    if (rightwards && isPiece(c) && c.x1 - c.x0 > STRIP_WIDTH) {
      run.push(c);
      continue;
    }
    stretch.length = 0;
    splitCurve(c, stretch);
    // Arcs come clockwise; take the pieces in the chain's own direction.
    if (c.turn > 0) stretch.reverse();
    if (stretch.length === 0) close();
    for (const piece of stretch) {
      // Narrower than any strip: upright but for rounding.
      if (piece.x1 - piece.x0 <= STRIP_WIDTH) {
        close();
        continue;
      }
      const goesRight = runsRight(c, piece);
      if (goesRight !== rightwards) close();
      rightwards = goesRight;
      run.push(piece);
    }
  }
  close();
}

function threadOf(pieces: readonly Piece[], depthFrom: number | null, of: number, id: number): Thread {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const p of pieces) {
    least = Math.min(least, lowOf(p));
    most = Math.max(most, highOf(p));
  }
  const [low, high] = depthFrom === null ? [least, most] : [depthFrom - most, depthFrom - least];
  return { pieces, depthFrom, x0: pieces[0]!.x0, x1: pieces[pieces.length - 1]!.x1, low, high, of, id };
}

/** Whether the chain runs along a piece of this curve from left to right: clockwise on the upper half, anticlockwise on the lower. */
function runsRight(c: Curve, piece: Piece): boolean {
  return c.turn === 0 ? c.x0 < c.x1 : c.turn === piece.turn;
}

/** A level thread between two x: a face of the stock. */
export function levelThread(x0: number, x1: number, y: number, of: number, id: number): Thread {
  const piece: Piece = { x0, y0: y, x1, y1: y, cx: 0, cy: 0, r: 0, turn: 0 };
  return { pieces: [piece], depthFrom: null, x0, x1, low: y, high: y, of, id };
}

/** The place in a thread of the piece that spans x, the right one where two meet; the nearest beyond its ends. */
export function placeAt({ pieces }: Thread, x: number): number {
  let from = 0;
  let to = pieces.length - 1;
  while (from < to) {
    const middle = (from + to + 1) >> 1;
    if (pieces[middle]!.x0 <= x) from = middle;
    else to = middle - 1;
  }
  return from;
}

/** Height of a thread at x, mm; beyond its ends the height of the nearer end. */
export function threadHeight(t: Thread, x: number): number {
  const height = heightAt(t.pieces[placeAt(t, x)]!, x);
  return t.depthFrom === null ? height : t.depthFrom - height;
}

/** A thread's k-th piece as it lies in the plane. */
export function pieceAt({ pieces, depthFrom }: Thread, k: number): Piece {
  return depthFrom === null ? pieces[k]! : flipCurve(pieces[k]!, depthFrom);
}

/** A piece's share of a stretch of its thread. */
export interface Share {
  readonly piece: Piece;
  readonly x0: number;
  readonly x1: number;
}

/** The pieces of a thread over [x0, x1], left to right, the first and last of them cut there. */
export function sharesOf(t: Thread, x0: number, x1: number): Share[] {
  const shares: Share[] = [];
  for (let k = placeAt(t, x0); k < t.pieces.length; k++) {
    if (t.pieces[k]!.x0 >= x1) break;
    const piece = pieceAt(t, k);
    shares.push({ piece, x0: Math.max(piece.x0, x0), x1: Math.min(piece.x1, x1) });
  }
  return shares;
}
