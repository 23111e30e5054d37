import { arcAngle, pointAlong } from '../curve/along.ts';
import { meetCarriers } from '../curve/crossing.ts';
import { arc, type Curve, line, withEnds } from '../curve/curve.ts';
import { type Heading, turnBetween } from '../curve/heading.ts';
import type { Point } from '../curve/point.ts';
import type { Loop } from '../loop/loop.ts';

/** How a parallel goes round the outside of a corner: on an arc about the corner, or straight on to where both sides meet. */
export type Join = 'round' | 'sharp';

/** A sharp corner whose tip would lie further out than this many times the distance is rounded. */
const SHARPEST = 4;

/** Tangents that differ by less than this (radians) make no corner. */
const SMOOTH = 1e-9;

/**
 * The untrimmed parallel of a loop at `distance` mm to its left: each curve moved sideways, and round the outside of each corner the
 * curves that join both sides. An arc whose radius is no larger than the distance, on its inner side, has no parallel.
 */
export function drawParallels({ curves, closed }: Loop, distance: number, join: Join): Curve[] {
  const moved = curves.map((c) => moveAside(c, distance));
  const out: Curve[] = [];
  for (let i = 0; i < curves.length; i++) {
    const before = i > 0 ? i - 1 : closed ? curves.length - 1 : null;
    if (before !== null) out.push(...goRound(curves[before]!, curves[i]!, moved[before]!, moved[i]!, distance, join));
    if (moved[i] !== null) out.push(moved[i]!);
  }
  return out;
}

/** A curve moved sideways by `distance` mm to its left; null for an arc with no radius left. */
function moveAside(c: Curve, distance: number): Curve | null {
  if (c.turn !== 0) {
    // To the left is towards the centre of an arc run anticlockwise.
    const r = c.r - c.turn * distance;
    if (r <= 0) return null;
    const k = r / c.r;
    const x = (from: number) => c.cx + k * (from - c.cx);
    const y = (from: number) => c.cy + k * (from - c.cy);
    return { x0: x(c.x0), y0: y(c.y0), x1: x(c.x1), y1: y(c.y1), cx: c.cx, cy: c.cy, r, turn: c.turn };
  }
  const dx = c.x1 - c.x0;
  const dy = c.y1 - c.y0;
  const k = distance / Math.hypot(dx, dy);
  return line(c.x0 - k * dy, c.y0 + k * dx, c.x1 - k * dy, c.y1 + k * dx);
}

/** The curves that join the parallels of two neighbours round the outside of their corner; none on its inside, and none where there is no corner. */
function goRound(
  before: Curve,
  after: Curve,
  movedBefore: Curve | null,
  movedAfter: Curve | null,
  distance: number,
  join: Join,
): Curve[] {
  const a = pointAlong(before, 1, arcAngle(before));
  const b = pointAlong(after, 0, arcAngle(after));
  const bend = turnBetween(a, b);
  // Is this the inside of the corner? There the two parallels cross, and nothing joins them.
  if (Math.abs(bend) < SMOOTH || bend * distance > 0) return [];
  // From where to where does the join run?
  const from = movedBefore ? { x: movedBefore.x1, y: movedBefore.y1 } : beside(a, distance);
  const to = movedAfter ? { x: movedAfter.x0, y: movedAfter.y0 } : beside(b, distance);
  const { x, y } = a;
  if (join === 'sharp' && movedBefore && movedAfter) {
    const tip = meetBeyond(movedBefore, movedAfter, x, y, Math.abs(distance));
    if (tip !== null) return [runOn(movedBefore, from, tip), runOn(movedAfter, tip, to)];
  }
  return [{ ...arc(from.x, from.y, to.x, to.y, x, y, bend < 0 ? -1 : 1), r: Math.abs(distance) }];
}

/** The point `distance` mm to the left of a point, seen along its direction. */
function beside(h: Heading, distance: number): Point {
  const k = distance / Math.hypot(h.dx, h.dy);
  return { x: h.x - k * h.dy, y: h.y + k * h.dx };
}

/** The nearest point at which two parallels meet when they run on past their ends at the corner (x, y); null where there is none within `SHARPEST` distances. */
function meetBeyond(before: Curve, after: Curve, x: number, y: number, distance: number): Point | null {
  const found: number[] = [];
  meetCarriers(before, after, found);
  let best: Point | null = null;
  let least = SHARPEST * distance;
  for (let i = 0; i < found.length; i += 2) {
    const place = { x: found[i]!, y: found[i + 1]! };
    const out = Math.hypot(place.x - x, place.y - y);
    // A point nearer to the corner than the distance lies on its inside.
    if (out < least && out >= distance && isAhead(before, place, 1) && isAhead(after, place, 0)) {
      best = place;
      least = out;
    }
  }
  return best;
}

/** Whether a point lies ahead of a curve's end (1), or behind its start (0). */
function isAhead(c: Curve, { x, y }: Point, end: 0 | 1): boolean {
  const h = pointAlong(c, end, arcAngle(c));
  const along = (x - h.x) * h.dx + (y - h.y) * h.dy;
  return end === 1 ? along > 0 : along < 0;
}

/** The part of a curve's line or circle between two points of it. */
function runOn(c: Curve, from: Point, to: Point): Curve {
  return withEnds(c, from.x, from.y, to.x, to.y);
}
