import { type Heading, splitAtExtremes } from '@fielded/geometry';
import { cuttingPoint, type KnifeFace } from './knife-face.ts';
import type { LimiterReport } from './knife-report.ts';
import { knifeOrdinates } from './ordinates.ts';
import type { SeenProfile } from './seen-profile.ts';
import { steelCurve, steelOutline, steelPath } from './steel-outline.ts';

/** Places along every curve where the gap to the limiter is looked at. */
const LOOKED_AT = 16;

/** The limiter (formula K7), and how far the knife stands out beyond it, at the ends of every curve and at places between. */
export function makeLimiter(seen: SeenProfile, face: KnifeFace, gap: number, step: number): LimiterReport {
  const fit = steelOutline(seen, face, gap);
  const onRadius: number[] = [];
  const alongFace: number[] = [];
  for (const c of splitAtExtremes(seen.chain)) {
    const [knife, limiter] = [steelCurve(c, face), steelCurve(c, face, gap)];
    for (let i = 0; i <= LOOKED_AT; i++) {
      const [edge, behind] = [knife(i / LOOKED_AT), limiter(i / LOOKED_AT)];
      const radiusOf = (p: Heading) => cuttingPoint(face, { s: p.x, t: p.y }).radius;
      onRadius.push(radiusOf(edge) - radiusOf(behind));
      alongFace.push(behind.y - edge.y);
    }
  }
  return {
    outline: steelPath(fit.chain),
    pieces: fit.chain.length,
    deviation: fit.deviation,
    ordinates: knifeOrdinates(seen, face, step, gap),
    gap: { ...rangeOf(onRadius), alongFace: rangeOf(alongFace) },
  };
}

function rangeOf(values: readonly number[]): { least: number; most: number } {
  return { least: Math.min(...values), most: Math.max(...values) };
}
