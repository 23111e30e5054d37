import { arcAngle, pointAlong, splitAtExtremes } from '@fielded/geometry';
import { faceOffset, type KnifeFace } from './knife-face.ts';
import type { SeenProfile } from './seen-profile.ts';

/** A face must stand this share of its radius above the foot of the perpendicular to count as reaching: nearer, the outline runs to infinity. */
const LEAST_RISE = 1e-6;

/** Places along an arc that are looked at under shear. */
const ARC_PLACES = 64;

/**
 * Whether the face gets in to the least radius the profile asks for, and the greatest reach of a profile with the same
 * stations that it could still cut, mm.
 *
 * The face cuts no radius smaller than its distance from the axis at that station, so with no shear the greatest reach
 * is R·(1 − sin γ) (formula K3). Shear changes the distance along the knife; the worst station decides.
 */
export function faceReach(seen: SeenProfile, face: KnifeFace, gap = 0): { reaches: boolean; greatest: number } {
  let reaches = true;
  let greatest = Number.POSITIVE_INFINITY;
  for (const c of splitAtExtremes(seen.chain)) {
    const angle = arcAngle(c);
    // Along a line, and where nothing but the radius changes, the worst is at an end; along an arc under shear it need not be.
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
