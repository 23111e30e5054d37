import { type ArcFit, flipCurve } from '@fielded/geometry';
import { toDegrees } from '../measure/angle.ts';
import type { Head } from '../shop/shop.ts';
import { outlineExtent } from './extent.ts';
import { cuttingPoint, type KnifeFace, localRake, type SteelPoint } from './knife-face.ts';
import type { KnifeOrdinate } from './knife-report.ts';
import { edgeOrdinates, steelOrdinates } from './ordinates.ts';
import type { SeenProfile } from './seen-profile.ts';
import { steelOutline } from './steel-outline.ts';

/** A knife's steel. `width` on the steel and `axial` along the spindle, mm. */
interface SteelShape {
  readonly outline: ArcFit;
  readonly width: number;
  readonly axial: number;
  readonly ordinates: KnifeOrdinate[];
}

/** The steel itself: its outline on the face, how wide it is, and its ordinates every `step` mm. */
export function shapeSteel(
  seen: SeenProfile,
  steel: SeenProfile | undefined,
  face: KnifeFace,
  head: Head,
  step: number,
): SteelShape {
  const outline: ArcFit = steel
    ? { chain: steel.chain.map((c) => flipCurve(c, 0)), deviation: 0 }
    : steelOutline(seen, face);
  const points = steel ? steelOrdinates(steel, step) : edgeOrdinates(seen.chain, face, step);
  return {
    outline,
    ...extentOf(seen, steel, face),
    ordinates: points.map((p) => withRake(p, face, head.wedge)),
  };
}

/** How wide a knife is on its steel and along the spindle, mm: sheared, it is wider on the steel than the cut is. */
export function extentOf(
  seen: SeenProfile,
  steel: SeenProfile | undefined,
  face: KnifeFace,
): { readonly width: number; readonly axial: number } {
  const { width } = outlineExtent(steel ? steel.chain : seen.chain);
  return steel ? { width, axial: width * face.cosShear } : { width: width / face.cosShear, axial: width };
}

function withRake(p: SteelPoint, face: KnifeFace, wedge: number): KnifeOrdinate {
  const { station, radius } = cuttingPoint(face, p);
  const rake = localRake(face, station, radius);
  return { s: p.s, t: p.t, radius, rake: toDegrees(rake), clearance: toDegrees(Math.PI / 2 - rake - wedge) };
}
