import { pointAlong, splitAtExtremes } from '../geometry/along.ts';
import { arcAngle, type Chain, type Curve } from '../geometry/curve.ts';
import { fitArcs } from '../geometry/fit-arcs.ts';
import { profileChain } from '../profile/chain.ts';
import type { OutlineProfile, Profile } from '../profile/profile.ts';
import { cuttingPoint, faceOffset, type KnifeFace, knifeFace } from './knife-face.ts';
import { curveToCut, type SeenProfile, seeProfile } from './seen-profile.ts';
import type { Head } from './shop.ts';

/** How far the wood's outline may lie from the one the steel cuts, mm: far below anything the section is read to. */
const WOOD_TOLERANCE = 1e-5;

/**
 * The profile that a knife leaves in the wood, from an outline that was taken off its steel (knife to wood).
 *
 * The outline is drawn in cut coordinates as if it were the wood: its reach is measured along the steel's face from the
 * tip. The tip stays where it is drawn; every other point moves to the radius it cuts at (`cuttingPoint`), always nearer
 * the tip. `tilt` is how the panel is presented, radians. Lines and arcs within 1e-5 mm of the exact curve.
 */
export function woodProfile(steel: Profile, head: Head, tilt: number): OutlineProfile {
  const seen = seeProfile(profileChain(steel), tilt);
  const chain = cutBySteel(seen, knifeFace(head)).map((c) => curveToCut(seen, c));
  const monotone = splitAtExtremes(chain);
  return {
    shape: 'outline',
    reach: Math.max(...monotone.flatMap((c) => [c.x0, c.x1])),
    depth: Math.max(...monotone.flatMap((c) => [c.y0, c.y1])),
    chain,
  };
}

/** What an outline of steel cuts; both as the head sees them: x from the tip, y = −t on the steel and −(R − r) in the wood. */
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
