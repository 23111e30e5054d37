import { arcAngle, type Curve, findPeak, pointAlong, splitAtExtremes } from '@fielded/geometry';
import type { Head } from '../shop/shop.ts';
import { type KnifeFace, knifePoint, localRake, type SteelPoint } from './knife-face.ts';
import { forwardWay, type SeenProfile } from './seen-profile.ts';

/** The least of a figure along the knife's edge and where it is; angles in radians, heel in mm. */
export interface LeastAlong {
  readonly least: number;
  readonly at: SteelPoint;
}

/** How the knife clears the wood behind its edge. */
export interface EdgeClearance {
  /** Between the back of the knife and the circle of the edge in front of it. */
  readonly back: LeastAlong;
  /** Between the back of the knife and the wall it has cut. */
  readonly side: LeastAlong;
  /** How far the heel, where the ground back meets the knife's own back, stays inside the circle of its edge, mm. */
  readonly heel: LeastAlong;
}

/** Places tried along each curve, before the least is searched for between them. */
const TRIED = 24;

/** A point of the edge: the steel there, the radius it cuts at, and its angles, radians. */
interface EdgePoint {
  readonly radius: number;
  readonly station: number;
  readonly clearance: number;
  readonly side: number;
}

/**
 * Least clearance, side clearance and heel room along a profile's edge.
 *
 * Clearance α = 90° − local rake − wedge (formula K4); side clearance on a wall at φ to the axis tan β = tan α · cos φ
 * (formula K5), negative on an undercut wall. Computed at 25 points of every monotonic curve and refined by golden section between
 * them; accurate to about 1e-9 where the least is at a curve's end, 1e-6 inside a curve. Of equal places the first counts.
 */
export function clearEdge(seen: SeenProfile, face: KnifeFace, head: Head): EdgeClearance {
  return {
    back: leastBackClearance(seen, face, head),
    side: leastOnSteel(seen, face, head, (p) => p.side),
    heel: leastOnSteel(seen, face, head, (p) => heelRoom(p, head)),
  };
}

/** The first of these alone. */
export function leastBackClearance(seen: SeenProfile, face: KnifeFace, head: Head): LeastAlong {
  return leastOnSteel(seen, face, head, (p) => p.clearance);
}

function leastOnSteel(seen: SeenProfile, face: KnifeFace, head: Head, figure: (p: EdgePoint) => number): LeastAlong {
  const found = leastAlong(seen, face, head, figure);
  return { least: figure(found), at: knifePoint(face, found.station, found.radius) };
}

/** The edge along a curve of the seen profile, as a function of the fraction u of its length. */
export function edgeAlong(c: Curve, seen: SeenProfile, face: KnifeFace, wedge: number): (u: number) => EdgePoint {
  const way = forwardWay(seen.tilt);
  const angle = arcAngle(c);
  return (u) => {
    const p = pointAlong(c, u, angle);
    const radius = face.radius + p.y;
    const clearance = Math.PI / 2 - localRake(face, p.x, radius) - wedge;
    // Adding 0 turns the -0 of a wall square to the axis into 0.
    const alongAxis = (way * p.dx) / Math.hypot(p.dx, p.dy) + 0;
    return { radius, station: p.x, clearance, side: Math.atan(Math.tan(clearance) * alongAxis) };
  };
}

/**
 * How far the heel stays inside the circle of its edge, mm; negative where it rubs.
 *
 * The ground back leaves the edge at the clearance angle α below the tangent of the circle and is x = thickness / sin(wedge) long, so
 * the heel lies √(r² − 2·x·r·sin α + x²) from the axis (formula K6). No point between edge and heel is farther from the axis than the
 * farther of the two, and behind the heel the knife falls away.
 */
function heelRoom({ radius, clearance }: EdgePoint, head: Head): number {
  const back = head.knifeThickness / Math.sin(head.wedge);
  return radius - Math.sqrt(radius * radius - 2 * back * radius * Math.sin(clearance) + back * back);
}

function leastAlong(seen: SeenProfile, face: KnifeFace, head: Head, figure: (p: EdgePoint) => number): EdgePoint {
  let best: EdgePoint | undefined;
  const offer = (p: EdgePoint): boolean => {
    if (best && figure(p) >= figure(best) - 1e-12) return false;
    best = p;
    return true;
  };
  for (const c of splitAtExtremes(seen.chain)) {
    const at = edgeAlong(c, seen, face, head.wedge);
    let nearest = -1;
    for (let i = 0; i <= TRIED; i++) if (offer(at(i / TRIED))) nearest = i;
    if (nearest < 0) continue;
    const from = Math.max(0, nearest - 1) / TRIED;
    const to = Math.min(TRIED, nearest + 1) / TRIED;
    offer(at(findPeak((u) => -figure(at(u)), from, to, 40)));
  }
  if (!best) throw new RangeError('a profile without pieces has no edge');
  return best;
}
