import { type Chain, type Curve, line } from '../curve/curve.ts';
import { heightAt } from '../curve/piece.ts';
import { STRIP_WIDTH } from '../curve/tolerance.ts';
import { walkStrips } from './strips.ts';
import { type Share, sharesOf, type Thread, threadChain } from './thread.ts';

/**
 * The upper envelope of joined curves: at each x the greatest height any of them has there.
 *
 * Returned as one chain left to right, with an upright line wherever the envelope jumps; it lies exactly on the curves
 * given. Curves without width (upright lines) count by their neighbours. Curves must not cross one another unless they
 * are given in different `groups`; within a group they may touch. Throws RangeError where nothing has any width.
 */
export function upperEnvelope(groups: readonly Chain[]): Chain {
  const threads: Thread[] = [];
  groups.forEach((chain, of) => {
    threadChain(chain, of, threads);
  });
  if (threads.length === 0)
    throw new RangeError(`no width to take an envelope over in ${groups.length} groups of curves`);
  const from = threads.reduce((least, { x0 }) => Math.min(least, x0), Number.POSITIVE_INFINITY);
  const to = threads.reduce((most, { x1 }) => Math.max(most, x1), Number.NEGATIVE_INFINITY);

  const chain: Curve[] = [];
  let top: Thread | undefined;
  let since = from;
  const close = (until: number) => {
    if (top !== undefined) for (const share of sharesOf(top, since, until)) appendShare(chain, share);
  };
  walkStrips(threads, from, to, ({ left, order }) => {
    const highest = order[order.length - 1];
    if (highest === top) return;
    close(left);
    top = highest;
    since = left;
  });
  close(to);
  return chain;
}

/** Adds a stretch of a piece, and the upright step up or down to it. */
function appendShare(chain: Curve[], { piece, x0, x1 }: Share): void {
  const y0 = heightAt(piece, x0);
  const last = chain[chain.length - 1];
  if (last !== undefined && Math.abs(last.y1 - y0) > STRIP_WIDTH) chain.push(line(x0, last.y1, x0, y0));
  const { cx, cy, r, turn } = piece;
  chain.push({ x0, y0, x1, y1: heightAt(piece, x1), cx, cy, r, turn });
}

/**
 * Whether a chain never runs back along the direction (ux, uy), a unit vector: whether it has one height above every point
 * of it but for steps, and so is its own envelope there. A lean of up to 1e-12 of a right angle counts as upright: rounding
 * at the end of a quarter circle.
 */
export function runsForward(chain: Chain, ux: number, uy: number): boolean {
  for (const c of chain) {
    const dx = c.x1 - c.x0;
    const dy = c.y1 - c.y0;
    const forward = dx * ux + dy * uy;
    if (c.turn === 0) {
      if (forward < -LEAN * Math.abs(dx * uy - dy * ux)) return false;
      continue;
    }
    // Anticlockwise the tangent is the radius a quarter turn on; both ends forward, and under half a turn, will do.
    const atStart = c.turn * ((c.x0 - c.cx) * uy - (c.y0 - c.cy) * ux);
    const atEnd = c.turn * ((c.x1 - c.cx) * uy - (c.y1 - c.cy) * ux);
    if (atStart < -LEAN * c.r || atEnd < -LEAN * c.r || forward <= 0) return false;
  }
  return true;
}

const LEAN = 1e-12;
