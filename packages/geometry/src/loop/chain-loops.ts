import { type Curve, reverseCurve } from '../curve/curve.ts';
import type { Loop } from './loop.ts';

/** Ends closer than this (mm, in x and in y) are one point. */
const NEAR = 1e-6;

/**
 * Joins curves that together bound something, given in any order and direction, into closed loops. A loop for which no next curve
 * is found is closed where it stops.
 */
export function chainLoops(curves: readonly Curve[]): Loop[] {
  const left = [...curves];
  const loops: Loop[] = [];
  while (left.length) {
    const run = [left.shift()!];
    for (;;) {
      const end = run[run.length - 1]!;
      if (near(end.x1, end.y1, run[0]!.x0, run[0]!.y0) && run.length > 1) break;
      const next = left.findIndex((c) => near(c.x0, c.y0, end.x1, end.y1) || near(c.x1, c.y1, end.x1, end.y1));
      if (next < 0) break;
      const [curve] = left.splice(next, 1);
      run.push(near(curve!.x0, curve!.y0, end.x1, end.y1) ? curve! : reverseCurve(curve!));
    }
    loops.push({ curves: run, closed: true });
  }
  return loops;
}

function near(ax: number, ay: number, bx: number, by: number): boolean {
  return Math.abs(ax - bx) < NEAR && Math.abs(ay - by) < NEAR;
}
