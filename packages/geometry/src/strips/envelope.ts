import { type Chain, type Curve, line } from '../curve/curve.ts';
import { heightAt } from '../curve/piece.ts';
import { STRIP_WIDTH } from '../curve/tolerance.ts';
import { walkStrips } from './strips.ts';
import { type Share, sharesOf, type Thread, threadChain } from './thread.ts';

/**
 * The upper envelope of curves: at each x the greatest height that any of them has there, as one chain from left to right.
 *
 * The envelope lies exactly on the curves given; where it jumps it holds an upright line. Upright lines among the curves add
 * nothing: their neighbours hold the heights of their ends. The curves of one group may touch, but must not cross; curves of
 * different groups may cross.
 *
 * @throws RangeError where no curve has any width.
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

  // Strip by strip: which thread is highest? Where that changes, the stretch of the one before ends.
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

/** Appends a stretch of a piece, with the upright line up or down to its start where there is a step. */
function appendShare(chain: Curve[], { piece, x0, x1 }: Share): void {
  const y0 = heightAt(piece, x0);
  const last = chain[chain.length - 1];
  if (last !== undefined && Math.abs(last.y1 - y0) > STRIP_WIDTH) chain.push(line(x0, last.y1, x0, y0));
  const { cx, cy, r, turn } = piece;
  chain.push({ x0, y0, x1, y1: heightAt(piece, x1), cx, cy, r, turn });
}

/**
 * Whether a chain never runs backwards along the unit vector (ux, uy). It then has one height above every point of that axis but for
 * its steps, and is its own envelope. A slope backwards of less than 1e-12 counts as upright: rounding at the end of a quarter
 * circle.
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
    // The tangent is the radius turned by a quarter turn. An arc runs forwards if it does at both ends and takes less than half a turn.
    const atStart = c.turn * ((c.x0 - c.cx) * uy - (c.y0 - c.cy) * ux);
    const atEnd = c.turn * ((c.x1 - c.cx) * uy - (c.y1 - c.cy) * ux);
    if (atStart < -LEAN * c.r || atEnd < -LEAN * c.r || forward <= 0) return false;
  }
  return true;
}

/** A slope backwards that rounding may cause. */
const LEAN = 1e-12;
