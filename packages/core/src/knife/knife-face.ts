import type { Head } from '../shop/shop.ts';

/**
 * The flat face of a knife in its head, lengths mm.
 *
 * Rake sets it `offset` = R·sin γ off the axis; `seat` = √(R² − offset²) is the way from the foot of that perpendicular
 * to the tip. Shear turns it about its up-direction.
 */
export interface KnifeFace {
  readonly radius: number;
  readonly offset: number;
  readonly seat: number;
  readonly cosShear: number;
  readonly sinShear: number;
}

/** A point of the knife's face from its tip, mm: `s` along the tip line, growing with depth, `t` growing towards the axis. */
export interface SteelPoint {
  readonly s: number;
  readonly t: number;
}

/** The face of a head's knives at the head's cutting radius. */
export function knifeFace(head: Pick<Head, 'cuttingDiameter' | 'rake' | 'shear'>): KnifeFace {
  const radius = head.cuttingDiameter / 2;
  const offset = radius * Math.sin(head.rake);
  return {
    radius,
    offset,
    // Computed as for any other point and not as R·cos γ, so that the tip has t = 0 exactly.
    seat: Math.sqrt((radius - offset) * (radius + offset)),
    cosShear: Math.cos(head.shear),
    sinShear: Math.sin(head.shear),
  };
}

/**
 * The distance of the face from the axis at a station, mm, measured square to the face's up-direction: the offset of the rake, which
 * shear makes larger or smaller along the knife. No point of the face at that station cuts at a smaller radius.
 */
export function faceOffset(face: KnifeFace, station: number): number {
  return face.offset + (station * face.sinShear) / face.cosShear;
}

/**
 * The point of the steel that cuts at `radius`, at `station` mm along the axis from the tip (wood to knife).
 *
 * With u the face's up-direction and z the axis, the face is P = P_tip + s·(cos λ·z + sin λ·(u × z)) − t·u and
 * P_tip = seat·u + offset·(u × z): positive shear makes deeper stations cut later. So s = station / cos λ and
 * t = seat − √(radius² − faceOffset²) (formula K1; with no shear the relation of circular forming tools whose cutting
 * face is set off centre, Machinery's Handbook). Exact to rounding.
 *
 * @throws RangeError where the face does not reach the radius.
 * @example knifePoint(face, 0, 60) // R = 80, 20°: { s: 0, t: 21.77… }, where the wood is only 20 deep
 */
export function knifePoint(face: KnifeFace, station: number, radius: number): SteelPoint {
  const offset = faceOffset(face, station);
  const up2 = (radius - offset) * (radius + offset);
  if (!(up2 >= 0 && radius >= 0))
    throw new RangeError(`the face, ${offset} mm off the axis, never reaches radius ${radius} mm`);
  return { s: station / face.cosShear, t: face.seat - Math.sqrt(up2) };
}

/**
 * Where a point of the steel cuts: its station along the axis from the tip, and its radius (knife to wood), mm.
 *
 * The inverse of `knifePoint`: station = s·cos λ, radius = √((seat − t)² + (offset + s·sin λ)²). Exact.
 */
export function cuttingPoint(face: KnifeFace, { s, t }: SteelPoint): { station: number; radius: number } {
  return { station: s * face.cosShear, radius: Math.hypot(face.seat - t, face.offset + s * face.sinShear) };
}

/** Rake where the face cuts at `radius`, radians: γ = asin(offset / radius); it grows inwards (formula K2). */
export function localRake(face: KnifeFace, station: number, radius: number): number {
  return Math.asin(Math.min(1, faceOffset(face, station) / radius));
}
