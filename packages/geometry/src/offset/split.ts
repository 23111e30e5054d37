import { arcAngle, pointAlong } from '../curve/along.ts';
import { growBox } from '../curve/box.ts';
import { crossings, isOn } from '../curve/crossing.ts';
import { type Curve, withEnds } from '../curve/curve.ts';
import { curveBox } from '../curve/curve-box.ts';
import type { Point } from '../curve/point.ts';
import { SAME_LENGTH } from '../curve/tolerance.ts';
import { BoxTree } from './box-tree.ts';

/** Splits curves wherever they cross or touch one another or one of `others`. Parts no longer than 1e-9 mm are left out. */
export function splitAtCrossings(curves: readonly Curve[], others: readonly Curve[]): Curve[] {
  const all = [...curves, ...others];
  const boxes = all.map((c) => growBox(curveBox(c), SAME_LENGTH));
  const tree = new BoxTree(boxes);
  const stops: Point[][] = curves.map(() => []);
  for (const [i, curve] of curves.entries()) {
    tree.search(boxes[i]!, (k) => {
      // Take each pair once, so that both curves are split at exactly the same point.
      if (k < curves.length && k <= i) return;
      for (const point of meetings(curve, all[k]!)) {
        stops[i]!.push(point);
        if (k < curves.length) stops[k]!.push(point);
      }
    });
  }
  return curves.flatMap((curve, i) => cutAt(curve, stops[i]!));
}

/** The points in which two curves meet; where they coincide over a length, the ends of that length. */
function meetings(p: Curve, q: Curve): Point[] {
  if (!sameCarrier(p, q)) return crossings(p, q);
  const points: Point[] = [];
  for (const [c, other] of [
    [p, q],
    [q, p],
  ] as const) {
    if (isOn(other, c.x0, c.y0)) points.push({ x: c.x0, y: c.y0 });
    if (isOn(other, c.x1, c.y1)) points.push({ x: c.x1, y: c.y1 });
  }
  return points;
}

/** Whether two curves lie on one line or one circle, within 1e-9 mm. */
function sameCarrier(p: Curve, q: Curve): boolean {
  if (p.turn === 0 || q.turn === 0) return p.turn === q.turn && isBeside(p, q.x0, q.y0) && isBeside(p, q.x1, q.y1);
  return Math.abs(p.r - q.r) < SAME_LENGTH && Math.hypot(p.cx - q.cx, p.cy - q.cy) < SAME_LENGTH;
}

/** Whether a point lies on the infinite line of a curve, within 1e-9 mm. */
function isBeside(l: Curve, x: number, y: number): boolean {
  const dx = l.x1 - l.x0;
  const dy = l.y1 - l.y0;
  return Math.abs((x - l.x0) * dy - (y - l.y0) * dx) < SAME_LENGTH * Math.hypot(dx, dy);
}

/** Splits a curve at points of it, given in any order. */
function cutAt(c: Curve, points: readonly Point[]): Curve[] {
  if (points.length === 0) return [c];
  const ordered = points.map((p) => ({ ...p, at: placeOf(c, p.x, p.y) })).sort((a, b) => a.at - b.at);
  const parts: Curve[] = [];
  let { x0, y0 } = c;
  for (const { x, y } of [...ordered, { x: c.x1, y: c.y1 }]) {
    if (Math.hypot(x - x0, y - y0) <= SAME_LENGTH) continue;
    parts.push(withEnds(c, x0, y0, x, y));
    [x0, y0] = [x, y];
  }
  // Was the last point within 1e-9 mm of the end? Then the part before it runs to the end itself.
  const last = parts.at(-1);
  if (last !== undefined) parts[parts.length - 1] = withEnds(last, last.x0, last.y0, c.x1, c.y1);
  return parts;
}

/** A number that grows along a curve, for a point of it: along a line in proportion to the length, on an arc the angle from its middle. */
function placeOf(c: Curve, x: number, y: number): number {
  if (c.turn === 0) return (x - c.x0) * (c.x1 - c.x0) + (y - c.y0) * (c.y1 - c.y0);
  const middle = pointAlong(c, 0.5, arcAngle(c));
  const [mx, my] = [middle.x - c.cx, middle.y - c.cy];
  const [px, py] = [x - c.cx, y - c.cy];
  return c.turn * Math.atan2(mx * py - my * px, mx * px + my * py);
}
