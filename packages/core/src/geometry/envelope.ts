import type { Chain, Curve } from './curve.ts';
import { line } from './curve.ts';
import { heightAt, type Piece, splitCurve } from './piece.ts';
import { walkStrips } from './strips.ts';

/**
 * The upper envelope of joined curves: at each x the greatest height any of them has there.
 *
 * Returned as one chain left to right, with an upright line wherever the envelope jumps; it lies exactly on the curves
 * given. Curves without width (upright lines) count by their neighbours. Curves must not cross one another unless they
 * are given in different `groups`; within a group they may touch. Throws RangeError where nothing has any width.
 */
export function upperEnvelope(groups: readonly Chain[]): Chain {
  const pieces: Piece[] = [];
  for (let of = 0; of < groups.length; of++) for (const c of groups[of]!) splitCurve(c, of, pieces);
  if (pieces.length === 0)
    throw new RangeError(`no width to take an envelope over in ${groups.length} groups of curves`);
  const from = pieces.reduce((least, p) => Math.min(least, p.x0), Number.POSITIVE_INFINITY);
  const to = pieces.reduce((most, p) => Math.max(most, p.x1), Number.NEGATIVE_INFINITY);

  const chain: Curve[] = [];
  let top: Piece | undefined;
  let since = from;
  const close = (until: number) => {
    if (top !== undefined) appendStretch(chain, top, since, until);
  };
  walkStrips(pieces, from, to, ({ left, order }) => {
    const highest = order[order.length - 1];
    if (highest === top) return;
    close(left);
    top = highest;
    since = left;
  });
  close(to);
  return chain;
}

/** Adds the stretch of a piece over [x0, x1], and the upright step up or down to it. */
function appendStretch(chain: Curve[], p: Piece, x0: number, x1: number): void {
  const y0 = heightAt(p, x0);
  const last = chain[chain.length - 1];
  if (last !== undefined && last.y1 !== y0) chain.push(line(x0, last.y1, x0, y0));
  chain.push({ x0, y0, x1, y1: heightAt(p, x1), cx: p.cx, cy: p.cy, r: p.r, turn: p.turn });
}

/**
 * Whether a chain already is its own envelope: whether it never runs back in x, so that it has one height at every x but
 * for upright steps. A lean of up to 1e-12 of a right angle counts as upright: rounding at the end of a quarter circle.
 */
export function runsForward(chain: Chain): boolean {
  return chain.every((c) => {
    if (c.turn === 0) return c.x1 - c.x0 >= -LEAN * Math.abs(c.y1 - c.y0);
    // Going anticlockwise the tangent is the radius turned a quarter turn; both ends forward and under half a turn will do.
    const forwardAtStart = -c.turn * (c.y0 - c.cy) >= -LEAN * c.r;
    const forwardAtEnd = -c.turn * (c.y1 - c.cy) >= -LEAN * c.r;
    return forwardAtStart && forwardAtEnd && c.x1 > c.x0;
  });
}

const LEAN = 1e-12;
