import { arc, type Chain, type Curve, cornerAngle, distanceTo, line, type Point } from '@fielded/geometry';
import { fitCircle } from './fit-circle.ts';
import { join, onLevel } from './join-stretches.ts';
import { partStretches, type Stretch } from './stretches.ts';

/** Points this near to a corner are rounded by the blur, mm: they are not what the lines and arcs beside it are fitted to. */
const ROUNDED = 0.25;
/** A line that is off level or plumb by no more than this over its length, mm, or by this angle, radians, was drawn so. */
const OFF = 0.025;
const OFF_ANGLE = 0.006;
/** A wall that leans over by less than this, radians, stands plumb: no knife cuts under. */
const OVERHANG = 0.14;
/** An arc that goes deeper than its end by less than this, mm, was drawn level there. */
const DIP = 0.03;
/** Neighbours that meet at more than this, radians, make a corner. */
const CORNER = 0.3;

/**
 * A surface as the lines and arcs it was drawn with (formula T4): parted into stretches, each fitted by itself, joined where neighbours meet
 * or touch; lines that are nearly level or plumb are exactly so, and nothing is cut under. `points` are x in, y up; the first lies at
 * the edge, the last on the face. Null where it is not made of a few lines and arcs.
 */
export function fitStretches(points: readonly Point[], scatter: number): { chain: Chain; deviation: number } | null {
  const stretches = partStretches(points, scatter);
  if (stretches.length === 0 || stretches.length > MOST_STRETCHES) return null;
  const carriers = stretches.map((stretch) => carrierOf(points, stretch));
  if (carriers.some((carrier) => carrier === null)) return null;
  const found = carriers as Curve[];
  const joins = [
    onLevel(found[0]!, points[0]!, 'x'),
    ...found.slice(1).map((next, i) => join(found[i]!, next, middleOf(points, stretches[i]!, stretches[i + 1]!))),
    onLevel(found[found.length - 1]!, points[points.length - 1]!, 'y'),
  ];
  const chain = keepUpright(found, joins);
  return chain === null ? null : { chain, deviation: deviationOf(points, chain) };
}

/** More lines and arcs than this were not drawn: the surface is something else. */
const MOST_STRETCHES = 40;

/** The least squares line or circle of a stretch, without the points at its ends that corners have rounded. */
function carrierOf(points: readonly Point[], { kind, from, to }: Stretch): Curve | null {
  const count = to - from + 1;
  const trim = count >= 10 ? 2 : count >= 6 ? 1 : 0;
  const own = points.slice(from + trim, to + 1 - trim);
  const [first, last] = [own[0]!, own[own.length - 1]!];
  if (kind === 'line') return straightened(own);
  const circle = fitCircle(own);
  if (circle === null) return null;
  const { cx, cy } = circle;
  const middle = own[Math.floor(own.length / 2)]!;
  const turn = (middle.x - first.x) * (last.y - first.y) - (middle.y - first.y) * (last.x - first.x) > 0 ? 1 : -1;
  return { ...arc(first.x, first.y, last.x, last.y, cx, cy, turn), r: circle.r };
}

/** The least squares line through points, level or plumb where it is nearly so. */
function straightened(own: readonly Point[]): Curve {
  const n = own.length;
  const mx = own.reduce((sum, { x }) => sum + x, 0) / n;
  const my = own.reduce((sum, { y }) => sum + y, 0) / n;
  let [xx, xy, yy] = [0, 0, 0];
  for (const { x, y } of own) {
    xx += (x - mx) ** 2;
    xy += (x - mx) * (y - my);
    yy += (y - my) ** 2;
  }
  const angle = 0.5 * Math.atan2(2 * xy, xx - yy);
  const [first, last] = [own[0]!, own[n - 1]!];
  const length = Math.hypot(last.x - first.x, last.y - first.y);
  let dx = Math.cos(angle);
  let dy = Math.sin(angle);
  if ((last.x - first.x) * dx + (last.y - first.y) * dy < 0) [dx, dy] = [-dx, -dy];
  const isNear = (off: number) => off < OFF_ANGLE || (off < 0.1 && off * length < OFF);
  if (isNear(Math.abs(dy))) [dx, dy] = [Math.sign(dx), 0];
  else if (isNear(Math.abs(dx)) || (dx < 0 && -dx < OVERHANG)) [dx, dy] = [0, Math.sign(dy)];
  return line(mx - (dx * length) / 2, my - (dy * length) / 2, mx + (dx * length) / 2, my + (dy * length) / 2);
}

/** Where the points change over from one stretch to the next. */
function middleOf(points: readonly Point[], before: Stretch, next: Stretch): Point {
  const [p, q] = [points[before.to]!, points[next.from]!];
  return { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
}

/** The stretches from join to join, never leading back towards the edge. Null where a join is lost. */
function keepUpright(carriers: readonly Curve[], joins: readonly Point[]): Chain | null {
  const chain: Curve[] = [];
  let at = joins[0]!;
  for (const [i, carrier] of carriers.entries()) {
    const given = joins[i + 1]!;
    const to = { x: Math.max(given.x, at.x), y: given.y };
    if (to.x - given.x > 2 * ROUNDED) return null;
    if (Math.hypot(to.x - at.x, to.y - at.y) > 1e-6)
      chain.push(carrier.turn === 0 ? line(at.x, at.y, to.x, to.y) : arcBetween(carrier, at, to));
    at = to;
  }
  return chain.length === 0 ? null : chain;
}

/**
 * The arc of a carrier's radius and turn between two points; one that would lead back over an end starts or ends plumb there, and one that
 * would dip a little beside an end starts or ends level.
 */
function arcBetween({ r, turn, cx, cy }: Curve, from: Point, to: Point): Curve {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const chord = Math.hypot(dx, dy);
  const side = turn as -1 | 1;
  const half = chord / 2;
  const radius = Math.max(r, half);
  // The centre lies to the left of the way for an anticlockwise turn, beyond the chord for more than half a circle.
  const [ux, uy] = [dx / chord, dy / chord];
  const beyond = ((cx - from.x) * -uy + (cy - from.y) * ux) * side < 0 ? -1 : 1;
  const away = side * beyond * Math.sqrt(Math.max(0, radius * radius - half * half));
  const bent = arc(from.x, from.y, to.x, to.y, from.x + dx / 2 - uy * away, from.y + dy / 2 + ux * away, side);
  if (dx <= 1e-9) return line(from.x, from.y, to.x, to.y);
  // An anticlockwise turn goes inwards below its centre, and up to the right of it.
  const goesBack = ({ y }: Point) => side * (y - bent.cy) > 1e-9;
  const goesDown = ({ x }: Point) => side * (x - bent.cx) < -1e-9;
  const plumb = (chord * chord) / (2 * dx);
  const level = (chord * chord) / (2 * Math.abs(dy));
  if (goesBack(from)) return arc(from.x, from.y, to.x, to.y, from.x + plumb, from.y, side);
  if (goesBack(to)) return arc(from.x, from.y, to.x, to.y, to.x - plumb, to.y, side);
  const dips = (end: Point) => goesDown(end) && radius - Math.abs(end.y - bent.cy) < DIP;
  if (dy > 0 && dips(from)) return arc(from.x, from.y, to.x, to.y, from.x, from.y + side * level, side);
  if (dy > 0 && dips(to)) return arc(from.x, from.y, to.x, to.y, to.x, to.y + side * level, side);
  return bent;
}

/** How far points lie from the chain at most, mm, but for those that a corner's blur has rounded. */
function deviationOf(points: readonly Point[], chain: Chain): number {
  const corners = chain.slice(1).flatMap((next, i) => (Math.abs(cornerAngle(chain[i]!, next)) > CORNER ? [next] : []));
  let most = 0;
  for (const { x, y } of points) {
    if (corners.some(({ x0, y0 }) => Math.hypot(x - x0, y - y0) < ROUNDED)) continue;
    let least = Number.POSITIVE_INFINITY;
    for (const c of chain) least = Math.min(least, distanceTo(c, x, y));
    most = Math.max(most, least);
  }
  return most;
}
