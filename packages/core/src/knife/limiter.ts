import { arcAngle, curveBox, joinBoxes, pointAlong, splitAtExtremes } from '@fielded/geometry';
import { type KnifeFace, knifePoint } from './knife-face.ts';
import type { LimiterReport } from './knife-report.ts';
import { knifeOrdinates, reachAt } from './ordinates.ts';
import type { SeenProfile } from './seen-profile.ts';
import { steelOutline, steelPath } from './steel-outline.ts';

/** Places along every curve where the gap to the limiter is looked at. */
const LOOKED_AT = 16;

/**
 * The limiter that follows `seen` (see `limiterProfile`), set back by `gap` on the radius (formula K7), and how far the knife of
 * `profile` stands out beyond it at the ends of every curve and at places between: by the gap at least, by more where the
 * limiter clears a wall sideways.
 */
export function makeLimiter(
  seen: SeenProfile,
  profile: SeenProfile,
  face: KnifeFace,
  gap: number,
  step: number,
): LimiterReport {
  const fit = steelOutline(seen, face, gap);
  const edge = splitAtExtremes(profile.chain);
  const onRadius: number[] = [];
  const alongFace: number[] = [];
  for (const c of splitAtExtremes(seen.chain)) {
    const angle = arcAngle(c);
    for (let i = 0; i <= LOOKED_AT; i++) {
      const { x, y } = pointAlong(c, i / LOOKED_AT, angle);
      const reach = reachAt(edge, x);
      onRadius.push(reach - y + gap);
      alongFace.push(knifePoint(face, x, face.radius + y - gap).t - knifePoint(face, x, face.radius + reach).t);
    }
  }
  const box = joinBoxes(fit.chain.map(curveBox))!;
  return {
    outline: steelPath(fit.chain),
    pieces: fit.chain.length,
    deviation: fit.deviation,
    length: box.y1 - box.y0,
    width: box.x1 - box.x0,
    ordinates: knifeOrdinates(seen, face, step, gap),
    gap: { ...rangeOf(onRadius), alongFace: rangeOf(alongFace) },
  };
}

function rangeOf(values: readonly number[]): { least: number; most: number } {
  return { least: Math.min(...values), most: Math.max(...values) };
}
