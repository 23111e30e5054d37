import {
  arcAngle,
  type Chain,
  type Curve,
  findPeak,
  fitArcs,
  pointAlong,
  SAME_LENGTH,
  splitAtExtremes,
} from '@fielded/geometry';
import { profileChain } from '../profile/chain.ts';
import type { OutlineProfile, Profile } from '../profile/profile.ts';
import type { Head } from '../shop/shop.ts';
import { cuttingPoint, faceOffset, type KnifeFace, knifeFace } from './knife-face.ts';
import { curveToCut, moveTip, type SeenProfile, seeProfile } from './seen-profile.ts';

/** How far the outline in the wood may lie from what the steel cuts, mm: far less than any figure of the section shows. */
const WOOD_TOLERANCE = 1e-6;

/** Steel stays this share of the cutting radius away from the foot of the perpendicular from the axis. */
const LEAST_SEAT = 1e-3;

/** The most moves of the tip; two or three suffice, since each is a small share of the one before. */
const TIP_MOVES = 20;

/**
 * The profile that a knife leaves in the wood, from an outline that was measured on its steel (knife to wood). Lines and arcs within
 * 1e-6 mm of the exact curve.
 *
 * The outline is drawn in cut coordinates as if it were the wood: its reach is measured along the steel's face from the tip. The tip
 * stays where it is drawn; every other point moves to the radius it cuts at (`cuttingPoint`), which is always nearer to the tip. The
 * steel must not go past the foot of its face (see `steelReach`). `tilt` is how the panel is presented, radians.
 */
export function woodProfile(steel: Profile, head: Head, tilt: number): OutlineProfile {
  const face = knifeFace(head);
  const seen = seeSteel(steel, face, tilt);
  const chain = cutBySteel(seen, face).map((c) => curveToCut(seen, c));
  const monotone = splitAtExtremes(chain);
  return {
    shape: 'outline',
    reach: Math.max(...monotone.flatMap((c) => [c.x0, c.x1])),
    depth: Math.max(...monotone.flatMap((c) => [c.y0, c.y1])),
    chain,
  };
}

/**
 * The length of an outline of steel from its tip, and the greatest that it may have in a head, mm.
 *
 * The face is nearest to the axis at the foot of the perpendicular from it; steel beyond the foot would cut at growing radii again, and
 * no knife does. A thousandth of the radius before the foot the rake already exceeds 85°.
 */
export function steelReach(steel: Profile, head: Head, tilt: number): { length: number; most: number } {
  const face = knifeFace(head);
  const seen = seeSteel(steel, face, tilt);
  const length = Math.max(...splitAtExtremes(seen.chain).flatMap((c) => [0 - c.y0, 0 - c.y1]));
  return { length, most: face.seat - LEAST_SEAT * face.radius };
}

/**
 * An outline taken off the steel, x = s and y = −t from the tip.
 *
 * With shear, the point of the steel that reaches farthest is not the point that cuts farthest. The tip is moved to the latter, which
 * slightly changes what every point cuts, and so on until it no longer moves.
 */
export function seeSteel(steel: Profile, face: KnifeFace, tilt: number): SeenProfile {
  let seen = seeProfile(profileChain(steel), tilt);
  let moved = Number.POSITIVE_INFINITY;
  for (let i = 0; face.sinShear !== 0 && i < TIP_MOVES; i++) {
    const tip = cutsFarthest(seen, face);
    const move = Math.hypot(tip.x, tip.y);
    // On a level stretch, errors of the drawing would make the tip jump between the two ends: take the deeper one.
    if (move <= SAME_LENGTH || (tip.x < 0 && move > moved / 2)) break;
    seen = moveTip(seen, tip.x, tip.y);
    moved = move;
  }
  return seen;
}

function cutsFarthest(steel: SeenProfile, face: KnifeFace): { x: number; y: number } {
  let best = { x: 0, y: 0 };
  let greatest = face.radius;
  for (const c of splitAtExtremes(steel.chain)) {
    const angle = arcAngle(c);
    const radiusAt = (u: number) => {
      const p = pointAlong(c, u, angle);
      return cuttingPoint(face, { s: p.x, t: -p.y }).radius;
    };
    for (const u of [0, findPeak(radiusAt, 0, 1, 60), 1]) {
      const p = pointAlong(c, u, angle);
      const ahead = radiusAt(u) - greatest;
      if (ahead > SAME_LENGTH || (ahead > -SAME_LENGTH && p.x > best.x)) {
        best = { x: p.x, y: p.y };
        greatest = Math.max(greatest, radiusAt(u));
      }
    }
  }
  return best;
}

/** What an outline of steel cuts. Both are as the head sees them: x from the tip, y = −t on the steel and −(R − r) in the wood. */
function cutBySteel(steel: SeenProfile, face: KnifeFace): Chain {
  const chain: Curve[] = [];
  for (const c of steel.chain) {
    const angle = arcAngle(c);
    const fit = fitArcs((u) => {
      const p = pointAlong(c, u, angle);
      const { station, radius } = cuttingPoint(face, { s: p.x, t: -p.y });
      const slide = faceOffset(face, station) * face.sinShear * p.dx;
      return {
        x: station,
        y: radius - face.radius,
        dx: p.dx * face.cosShear,
        dy: (slide + (face.seat + p.y) * p.dy) / radius,
      };
    }, WOOD_TOLERANCE);
    chain.push(...fit.chain);
  }
  return chain;
}
