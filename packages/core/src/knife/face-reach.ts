import { arcAngle, pointAlong, splitAtExtremes } from '@fielded/geometry';
import { faceOffset, type KnifeFace } from './knife-face.ts';
import type { SeenProfile } from './seen-profile.ts';

/** A face reaches a radius if it stands this share of it above the foot of the perpendicular from the axis: nearer, the outline grows without bound. */
const LEAST_RISE = 1e-6;

/** Places along an arc that are tried where there is shear. */
const ARC_PLACES = 64;

/**
 * Whether the face cuts down to the profile's least radius, and the greatest reach, mm, of a profile with the same stations that it
 * could still cut.
 *
 * At a station the face cuts no radius smaller than its own distance from the axis. Without shear the greatest reach is therefore
 * R·(1 − sin γ) (formula K3). Shear changes the distance along the knife, and the worst station decides.
 */
export function faceReach(seen: SeenProfile, face: KnifeFace, gap = 0): { reaches: boolean; greatest: number } {
  let reaches = true;
  let greatest = Number.POSITIVE_INFINITY;
  for (const c of splitAtExtremes(seen.chain)) {
    const angle = arcAngle(c);
    // On a line, and without shear, an end of the curve is the worst; on an arc with shear it need not be.
    const places = c.turn !== 0 && face.sinShear !== 0 ? ARC_PLACES : 1;
    for (let i = 0; i <= places; i++) {
      const { x, y } = pointAlong(c, i / places, angle);
      const offset = Math.abs(faceOffset(face, x));
      greatest = Math.min(greatest, face.radius - gap - offset);
      if (face.radius + y - gap <= offset * (1 + LEAST_RISE)) reaches = false;
    }
  }
  return { reaches, greatest };
}
