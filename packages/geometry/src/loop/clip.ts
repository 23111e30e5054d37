import { arcAngles, pointAt } from '../curve/along.ts';
import { type Box, boxesOverlap } from '../curve/box.ts';
import { type Curve, withEnds } from '../curve/curve.ts';
import { curveBox } from '../curve/curve-box.ts';
import type { Loop } from './loop.ts';

/** The fractions of a curve's length, above 0 and below 1 and ascending, at which it crosses the upright line at `x`. A touch gives none. */
export function crossingsAt(curve: Curve, x: number): number[] {
  if (curve.turn === 0) {
    if ((curve.x0 - x) * (curve.x1 - x) >= 0) return [];
    return [(x - curve.x0) / (curve.x1 - curve.x0)];
  }
  // The line meets the circle at ± one angle. Which of the two does the arc pass, and how far along?
  const cosine = (x - curve.cx) / curve.r;
  if (Math.abs(cosine) >= 1) return [];
  const { from, sweep } = arcAngles(curve);
  const half = Math.acos(cosine);
  return [half, -half]
    .map((angle) => {
      const turned = ((angle - from) * curve.turn) % (2 * Math.PI);
      return (turned < 0 ? turned + 2 * Math.PI : turned) / Math.abs(sweep);
    })
    .filter((at) => at > 1e-12 && at < 1 - 1e-12)
    .sort((a, b) => a - b);
}

/** The part of a curve between two fractions of its length. */
export function partOf(curve: Curve, from: number, to: number): Curve {
  const a = from === 0 ? { x: curve.x0, y: curve.y0 } : pointAt(curve, from);
  const b = to === 1 ? { x: curve.x1, y: curve.y1 } : pointAt(curve, to);
  return withEnds(curve, a.x, a.y, b.x, b.y);
}

/** The parts of the curves that lie between the upright lines at `x0` and `x1`. Parts that run along one of these lines are left out. */
export function curvesBetween(loops: readonly Loop[], x0: number, x1: number): Curve[] {
  const kept: Curve[] = [];
  for (const loop of loops) {
    for (const curve of loop.curves) {
      const cuts = [0, ...crossingsAt(curve, x0), ...crossingsAt(curve, x1), 1].sort((a, b) => a - b);
      for (let i = 1; i < cuts.length; i += 1) {
        if (cuts[i]! - cuts[i - 1]! < 1e-12) continue;
        // A part lies wholly between the lines or wholly outside. Where is its middle?
        const middle = pointAt(curve, (cuts[i - 1]! + cuts[i]!) / 2).x;
        if (middle > x0 && middle < x1) kept.push(partOf(curve, cuts[i - 1]!, cuts[i]!));
      }
    }
  }
  return kept;
}

/** The parts of curves that lie outside all of the boxes; the list itself where no box reaches into the room that a curve takes. */
export function curvesOutside(curves: readonly Curve[], boxes: readonly Box[]): readonly Curve[] {
  const rooms = curves.map(curveBox);
  if (!rooms.some((room) => boxes.some((each) => boxesOverlap(room, each, 1e-9)))) return curves;
  return curves.flatMap((curve, i) => {
    const met = boxes.filter((each) => boxesOverlap(rooms[i]!, each, 1e-9));
    if (met.length === 0) return [curve];
    // Split the curve wherever it crosses a side of a box; for the level sides, swap the axes.
    const across = swapAxes(curve);
    const cuts = met.flatMap(({ x0, y0, x1, y1 }) => [
      ...[x0, x1].flatMap((x) => crossingsAt(curve, x)),
      ...[y0, y1].flatMap((y) => crossingsAt(across, y)),
    ]);
    const at = [0, ...cuts.sort((a, b) => a - b), 1];
    const inside = (share: number) => {
      const { x, y } = pointAt(curve, share);
      return met.some((each) => x > each.x0 && x < each.x1 && y > each.y0 && y < each.y1);
    };
    // Keep neighbouring parts together: where the curve only touches a side it is not split.
    const kept: [number, number][] = [];
    for (let i = 1; i < at.length; i += 1) {
      if (at[i]! - at[i - 1]! < 1e-12 || inside((at[i - 1]! + at[i]!) / 2)) continue;
      const last = kept.at(-1);
      if (last !== undefined && at[i - 1]! - last[1] < 1e-12) last[1] = at[i]!;
      else kept.push([at[i - 1]!, at[i]!]);
    }
    return kept.map(([from, to]) => partOf(curve, from, to));
  });
}

/** Joins curves that follow one another, each starting within 1e-9 mm of the end of the one before, into open loops. */
export function joinCurves(curves: readonly Curve[]): Loop[] {
  const loops: Curve[][] = [];
  for (const curve of curves) {
    const current = loops[loops.length - 1];
    const last = current?.[current.length - 1];
    if (last && Math.abs(last.x1 - curve.x0) < 1e-9 && Math.abs(last.y1 - curve.y0) < 1e-9) current!.push(curve);
    else loops.push([curve]);
  }
  return loops.map((run) => ({ curves: run, closed: false }));
}

/** The least y (`top`) and the greatest y (`bottom`) of loops on the upright line at `x`, y growing downwards; null where the line misses them. */
export function spanAt(loops: readonly Loop[], x: number): { top: number; bottom: number } | null {
  let top = Infinity;
  let bottom = -Infinity;
  for (const loop of loops) {
    for (const curve of loop.curves) {
      for (const at of crossingsAt(curve, x)) {
        const { y } = pointAt(curve, at);
        top = Math.min(top, y);
        bottom = Math.max(bottom, y);
      }
    }
  }
  return top <= bottom ? { top, bottom } : null;
}

/** The curve mirrored in the line x = y. */
export function swapAxes(c: Curve): Curve {
  const turn = (c.turn === 0 ? 0 : -c.turn) as Curve['turn'];
  return { x0: c.y0, y0: c.x0, x1: c.y1, y1: c.x1, cx: c.cy, cy: c.cx, r: c.r, turn };
}
