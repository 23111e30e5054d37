import { heightAt, pointAt, SAME_LENGTH, upperEnvelope } from '@fielded/geometry';
import { outlineExtent } from './extent.ts';
import { faceReach } from './face-reach.ts';
import { type KnifeFace, knifePoint } from './knife-face.ts';
import type { LimiterReport } from './knife-report.ts';
import { limiterProfile, sideGap } from './limiter-profile.ts';
import { edgeOrdinates } from './ordinates.ts';
import type { SeenProfile } from './seen-profile.ts';
import { steelLength, steelOutline, steelPath } from './steel-outline.ts';

/** Places along every curve at which the gap between knife and limiter is measured. */
const LOOKED_AT = 16;

/** A gap within this of the one asked for, mm, is one on the radius; a larger one is that of a steep wall. */
const ON_RADIUS = 1e-7;

/** The limiter behind a knife (formula K7), with how far the knife stands out beyond it, mm; null where the limiter's face does not reach the profile's least radius. */
export function makeLimiter(seen: SeenProfile, face: KnifeFace, gap: number, step: number): LimiterReport | null {
  const side = sideGap(gap, outlineExtent(seen.chain).width);
  const chain = limiterProfile(seen.chain, gap, side);
  const behind: SeenProfile = { ...seen, chain };
  if (!faceReach(behind, face).reaches) return null;
  const fit = steelOutline(behind, face);
  return {
    outline: steelPath(fit.chain),
    pieces: fit.chain.length,
    deviation: fit.deviation,
    length: steelLength(chain, face),
    width: outlineExtent(chain).width / face.cosShear,
    ordinates: edgeOrdinates(chain, face, step),
    gap: { ...measureGap(seen, behind, face, gap), side },
  };
}

/** How far the knife stands out beyond the limiter, on the radius and along the steel, mm, over the stations where the gap is one on the radius. */
function measureGap(knife: SeenProfile, limiter: SeenProfile, face: KnifeFace, gap: number) {
  const edge = upperEnvelope([knife.chain]);
  const onRadius: number[] = [];
  const alongFace: number[] = [];
  for (const c of limiter.chain) {
    for (let i = 0; i <= LOOKED_AT; i++) {
      const { x, y } = pointAt(c, i / LOOKED_AT);
      const heights = edge.filter((e) => e.x0 - SAME_LENGTH <= x && x <= e.x1 + SAME_LENGTH).map((e) => heightAt(e, x));
      // Is this station beyond the ends of the knife? Then no knife stands out there.
      if (heights.length === 0) continue;
      const before = Math.max(...heights) - y;
      if (before > gap + ON_RADIUS) continue;
      onRadius.push(before);
      const tAt = (out: number) => knifePoint(face, x, face.radius + out).t;
      alongFace.push(tAt(y) - tAt(y + before));
    }
  }
  return { ...rangeOf(onRadius, gap), alongFace: rangeOf(alongFace, gap) };
}

function rangeOf(values: readonly number[], none: number): { least: number; most: number } {
  return values.length === 0 ? { least: none, most: none } : { least: Math.min(...values), most: Math.max(...values) };
}
