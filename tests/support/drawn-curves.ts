import { type Curve, type Loop, line } from '@fielded/geometry';
import { bow } from './drawn-chain.ts';
import type { Random } from './random.ts';

export type XY = readonly [number, number];

/** A curve with points of its own along it, from start to end, worked out from centre, radius and angles: x = cx + r·cos, y = cy + r·sin. */
export interface Drawn {
  readonly curve: Curve;
  readonly points: readonly XY[];
}

export const STEPS = 720;

export function drawLine([x0, y0]: XY, [x1, y1]: XY): Drawn {
  const at = (u: number): XY => [x0 + u * (x1 - x0), y0 + u * (y1 - y0)];
  return { curve: line(x0, y0, x1, y1), points: Array.from({ length: STEPS + 1 }, (_, k) => at(k / STEPS)) };
}

export function drawArc(cx: number, cy: number, r: number, from: number, sweep: number): Drawn {
  const at = (u: number): XY => [cx + r * Math.cos(from + u * sweep), cy + r * Math.sin(from + u * sweep)];
  const [[x0, y0], [x1, y1]] = [at(0), at(1)];
  return {
    curve: { x0, y0, x1, y1, cx, cy, r, turn: sweep > 0 ? 1 : -1 },
    points: Array.from({ length: STEPS + 1 }, (_, k) => at(k / STEPS)),
  };
}

/** The arc between two points that turns through an angle, anticlockwise where it is positive. */
export function drawBow(from: XY, to: XY, sweep: number): Drawn {
  const { cx, cy, r } = bow(...from, ...to, sweep);
  return drawArc(cx, cy, r, Math.atan2(from[1] - cy, from[0] - cx), sweep);
}

/** A line, or an arc of up to 340°, within some 20 mm of (30, 40); neither axis nor circle is anything special there. */
function drawAny(random: Random, spread = 12): Drawn {
  const place = (): XY => [30 + random.between(-spread, spread), 40 + random.between(-spread, spread)];
  if (random.unit() < 0.35) return drawLine(place(), place());
  const sweep = random.between(0.2, 5.9) * (random.unit() < 0.5 ? 1 : -1);
  return drawArc(...place(), random.between(2, 11), random.between(-3.1, 3.1), sweep);
}

export function drawSome(random: Random, count: number, spread?: number): Drawn[] {
  return Array.from({ length: count }, () => drawAny(random, spread));
}

/**
 * A level or upright line, or an arc that starts or ends where its circle is level or upright, or a rounding error before or after that;
 * up to all but a whole circle.
 */
function drawAwkward(random: Random): Drawn {
  const [x, y] = [30 + random.between(-12, 12), 40 + random.between(-12, 12)];
  const way = random.oneOf([-1, 1]);
  const length = way * random.between(2, 9);
  const kind = random.unit();
  if (kind < 0.1) return drawLine([x, y], [x + length, y]);
  if (kind < 0.2) return drawLine([x, y], [x, y + length]);
  const quarter =
    Math.floor(random.between(-3, 4)) * (Math.PI / 2) + random.oneOf([0, 0, 1e-15, -1e-15, 1e-13, -1e-13]);
  const sweep = random.oneOf([0.5, 1, 1.5, 2, 2.5, 3, 3.5]) * (Math.PI / 2) * way;
  return drawArc(x, y, random.between(2, 11), random.unit() < 0.5 ? quarter : quarter - sweep, sweep);
}

export function drawManyAwkward(random: Random, count: number): Drawn[] {
  return Array.from({ length: count }, () => drawAwkward(random));
}

/** Points of an arc of these lie at most 0.1 mm apart, and an arc leaves its chord by less than 2e-4 mm. */
export const STEP = 0.1;
export const BOW = 3e-4;

export function gap([ax, ay]: XY, [bx, by]: XY): number {
  return Math.hypot(ax - bx, ay - by);
}

/** The distance from a place to the nearest of the points along a curve. */
export function nearest({ points }: Drawn, place: XY): number {
  return points.reduce((least, p) => Math.min(least, gap(p, place)), Infinity);
}

/** The shares at which a value changes its sign from one point to the next. */
export function passings(points: readonly XY[], value: (point: XY) => number): number[] {
  return points
    .slice(1)
    .map((p, k) => (value(points[k]!) > 0 !== value(p) > 0 ? (k + 0.5) / STEPS : null))
    .filter((at) => at !== null);
}

/** A ring about (30, 40) of lines and flat bows that never crosses itself, with points along it. */
export function drawRing(random: Random): { loop: Loop; points: XY[] } {
  const corners = 5 + Math.floor(4 * random.unit());
  const places = Array.from({ length: corners }, (_, k): XY => {
    const angle = ((k + 0.6 * random.unit()) / corners) * 2 * Math.PI;
    const far = random.between(9, 15);
    return [30 + far * Math.cos(angle), 40 + far * Math.sin(angle)];
  });
  const drawn = places.map((from, k) => {
    const to = places[(k + 1) % corners]!;
    return random.unit() < 0.4
      ? drawLine(from, to)
      : drawBow(from, to, random.between(0.2, 0.9) * random.oneOf([-1, 1]));
  });
  return {
    loop: { curves: drawn.map(({ curve }) => curve), closed: true },
    points: drawn.flatMap(({ points }) => points.slice(1)),
  };
}

/** Whether a point lies inside a fine polygon: a ray to the right crosses it an odd number of times. */
export function isInside(points: readonly XY[], [x, y]: XY): boolean {
  return points.reduce((inside, [ax, ay], k) => {
    const [bx, by] = points[(k + 1) % points.length]!;
    return ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax) ? !inside : inside;
  }, false);
}
