import type { Box } from '../curve/box.ts';
import { type Curve, line, reverseCurve } from '../curve/curve.ts';
import { curveBox } from '../curve/curve-box.ts';

/** Curves joined end to start; `closed` when the last one ends where the first starts, so that they bound an area. */
export interface Loop {
  readonly curves: readonly Curve[];
  readonly closed: boolean;
}

/** A placing: every point is scaled about the origin, x is mirrored if asked, then the point is moved by (x, y). */
export interface Placing {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
  readonly mirrored?: boolean;
}

/** Loops scaled, mirrored and moved; arcs stay arcs. */
export function placeLoops(loops: readonly Loop[], placing: Placing): Loop[] {
  const { scale, x, y } = placing;
  const across = placing.mirrored ? -scale : scale;
  return loops.map((loop) => ({
    closed: loop.closed,
    curves: loop.curves.map((curve) => ({
      x0: x + across * curve.x0,
      y0: y + scale * curve.y0,
      x1: x + across * curve.x1,
      y1: y + scale * curve.y1,
      cx: x + across * curve.cx,
      cy: y + scale * curve.cy,
      r: scale * curve.r,
      turn: (placing.mirrored ? -curve.turn : curve.turn) as Curve['turn'],
    })),
  }));
}

/** The same curves in the opposite direction and order. */
export function reverseCurves(curves: readonly Curve[]): Curve[] {
  return curves.map(reverseCurve).reverse();
}

/** The smallest axis-parallel box that contains the loops; null where they hold no curve. */
export function loopsBox(loops: readonly Loop[]): Box | null {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { curves } of loops)
    for (const c of curves) {
      const box = curveBox(c);
      if (box.x0 < x0) x0 = box.x0;
      if (box.y0 < y0) y0 = box.y0;
      if (box.x1 > x1) x1 = box.x1;
      if (box.y1 > y1) y1 = box.y1;
    }
  return x0 <= x1 ? { x0, y0, x1, y1 } : null;
}

/** A loop of straight lines through points, closed unless `closed` is false. */
export function polygon(points: readonly (readonly [number, number])[], closed = true): Loop {
  const curves: Curve[] = [];
  for (let i = 1; i < points.length; i += 1) curves.push(line(...points[i - 1]!, ...points[i]!));
  if (closed && points.length > 1) curves.push(line(...points[points.length - 1]!, ...points[0]!));
  return { curves, closed };
}

/** The four sides of a box as a closed loop. */
export function rectangle({ x0, y0, x1, y1 }: Box): Loop {
  return polygon([
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ]);
}
