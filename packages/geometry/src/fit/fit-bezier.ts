import { type Curve, line } from '../curve/curve.ts';
import type { Heading } from '../curve/heading.ts';
import type { Point } from '../curve/point.ts';
import { SAME_LENGTH } from '../curve/tolerance.ts';
import { type ArcFit, FIT_TOLERANCE, fitArcs, type SmoothCurve } from './fit-arcs.ts';

/**
 * Fits a Bézier curve, given by its three (quadratic) or four (cubic) control points in mm, with lines and tangent arcs within
 * `tolerance` mm.
 *
 * Control points on one straight line give lines, one for each stretch between the points where the curve turns back; control points
 * that coincide give an empty chain. The deviation is measured (see `fitArcs`).
 *
 * @throws RangeError for another number of points.
 * @example fitBezier([{ x: 0, y: 0 }, { x: 5, y: 0 }, { x: 10, y: 0 }]).chain // one line from (0,0) to (10,0)
 */
export function fitBezier(points: readonly Point[], tolerance: number = FIT_TOLERANCE): ArcFit {
  const cubic = asCubic(points);
  const straight = straightRuns(cubic);
  return straight ? { chain: straight, deviation: 0 } : fitArcs(bezierCurve(cubic), tolerance);
}

type Cubic = readonly [Point, Point, Point, Point];

/** A quadratic curve is the cubic one whose inner control points lie two thirds of the way from its ends to its own. */
function asCubic(points: readonly Point[]): Cubic {
  const [p, q, r, s] = points;
  if (p && q && r && s && points.length === 4) return [p, q, r, s];
  if (p && q && r && points.length === 3) return [p, between(p, q, 2 / 3), between(r, q, 2 / 3), r];
  throw new RangeError(`a Bézier curve has 3 or 4 control points, got ${points.length}`);
}

function between(p: Point, q: Point, u: number): Point {
  return { x: p.x + (q.x - p.x) * u, y: p.y + (q.y - p.y) * u };
}

/** The curve with its tangent. Where two control points coincide at an end the derivative is 0 there, and the tangent is the limit from inside. */
function bezierCurve(cubic: Cubic): SmoothCurve {
  const [p, q, r, s] = cubic;
  const heading = (u: number): Heading => {
    const v = 1 - u;
    const a = v * v;
    const b = 2 * u * v;
    const c = u * u;
    return {
      x: a * v * p.x + 3 * a * u * q.x + 3 * v * c * r.x + c * u * s.x,
      y: a * v * p.y + 3 * a * u * q.y + 3 * v * c * r.y + c * u * s.y,
      dx: a * (q.x - p.x) + b * (r.x - q.x) + c * (s.x - r.x),
      dy: a * (q.y - p.y) + b * (r.y - q.y) + c * (s.y - r.y),
    };
  };
  return (u) => {
    const at = heading(u);
    if (Math.hypot(at.dx, at.dy) > SAME_LENGTH) return at;
    const inside = heading(u < 0.5 ? u + 1e-6 : u - 1e-6);
    return { x: at.x, y: at.y, dx: inside.dx, dy: inside.dy };
  };
}

/** The lines that a curve draws whose control points lie on one straight line; null for any other curve. */
function straightRuns(cubic: Cubic): Curve[] | null {
  const [p, q, r, s] = cubic;
  const far = cubic.reduce((best, c) => (distance(p, c) > distance(p, best) ? c : best), p);
  const length = distance(p, far);
  if (length <= SAME_LENGTH) return [];
  const ux = (far.x - p.x) / length;
  const uy = (far.y - p.y) / length;
  if (cubic.some((c) => Math.abs(ux * (c.y - p.y) - uy * (c.x - p.x)) > SAME_LENGTH)) return null;
  // Measured along the line, where does the curve turn back?
  const [a, b, c] = [q, r, s].map((k) => ux * (k.x - p.x) + uy * (k.y - p.y)) as [number, number, number];
  const stations = [
    0,
    ...turningPoints(a, b, c).map((u) => 3 * (1 - u) ** 2 * u * a + 3 * (1 - u) * u * u * b + u ** 3 * c),
  ];
  const runs: Curve[] = [];
  let x = p.x;
  let y = p.y;
  for (const station of [...stations.slice(1), c]) {
    const last = station === c;
    const [ex, ey] = last ? [s.x, s.y] : [p.x + ux * station, p.y + uy * station];
    if (Math.hypot(ex - x, ey - y) > SAME_LENGTH) {
      runs.push(line(x, y, ex, ey));
      [x, y] = [ex, ey];
    }
  }
  return runs;
}

/** The u, 0 < u < 1 and ascending, at which a cubic along a line, with control values 0, a, b and c, turns back: the roots of its derivative. */
function turningPoints(a: number, b: number, c: number): number[] {
  const k2 = c - 3 * b + 3 * a;
  const k1 = 2 * (b - 2 * a);
  const k0 = a;
  const root = Math.sqrt(Math.max(0, k1 * k1 - 4 * k2 * k0));
  const q = -(k1 + (k1 < 0 ? -root : root)) / 2;
  return [q / k2, k0 / q].filter((u) => u > 0 && u < 1).sort((m, n) => m - n);
}

function distance(p: Point, q: Point): number {
  return Math.hypot(q.x - p.x, q.y - p.y);
}
