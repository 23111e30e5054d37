// Where shear makes a curve of the steel reach furthest, or not far enough, between its ends: held against many places along it.
import { type Curve, splitAtExtremes } from '@fielded/geometry';
import { describe, expect, it } from 'vitest';
import { faceReach } from '../../packages/core/src/knife/face-reach.ts';
import { faceOffset, type KnifeFace, knifeFace } from '../../packages/core/src/knife/knife-face.ts';
import { seeProfile } from '../../packages/core/src/knife/seen-profile.ts';
import { AS_DRAWN, setSteel } from '../../packages/core/src/knife/set-steel.ts';
import { lengthFromTip, steelCurve, steelLength } from '../../packages/core/src/knife/steel-outline.ts';
import { profileChain } from '../../packages/core/src/profile/chain.ts';
import { arcAngle, pointAlong } from '../../packages/geometry/src/curve/along.ts';
import { DEGREE } from '../support/heads.ts';
import { Random } from '../support/random.ts';
import { randomProfile } from '../support/random-job.ts';

const PLACES = 2000;
const places = Array.from({ length: PLACES + 1 }, (_, i) => i / PLACES);

/** An arc profile as a head with much shear sees it. */
function shearedCase(random: Random): { chain: readonly Curve[]; rake: number; shear: number } {
  const profile = { ...randomProfile(random, 16), shape: random.oneOf(['cove', 'ovolo', 'ogee'] as const) };
  const { steel } = setSteel(profileChain(profile), AS_DRAWN, 0);
  const { chain } = seeProfile(steel, random.oneOf([0, Math.PI / 2, 0.6]));
  const shear = random.between(15, 44) * random.oneOf([-1, 1]) * DEGREE;
  return { chain, rake: random.between(5, 30) * DEGREE, shear };
}

describe('steel with shear', () => {
  it('is as long as its furthest place, at an end of a curve or between', () => {
    const random = new Random(11);
    let between = 0;
    for (let i = 0; i < 60; i++) {
      const { chain, ...angles } = shearedCase(random);
      const face = knifeFace({ cuttingDiameter: random.between(120, 200), ...angles });
      const seen = { chain, tipStation: 0, tipReach: 0, tilt: 0 };
      if (!faceReach(seen, face).reaches) continue;
      const curves = splitAtExtremes(chain).map((c) => steelCurve(c, face));
      const heights = curves.flatMap((at) => places.map((u) => at(u).y));
      const ends = curves.flatMap((at) => [at(0).y, at(1).y]);
      const [least, most] = [Math.min(...heights), Math.max(...heights)];
      // 2,000 places miss a peak of the least radius there is by 1e-6 mm at most.
      expect(steelLength(chain, face)).toBeCloseTo(most - least, 5);
      expect(lengthFromTip(chain, face)).toBeCloseTo(most - Math.min(0, least), 5);
      if (most > Math.max(...ends) + 1e-4 || least < Math.min(...ends) - 1e-4) between++;
    }
    expect(between).toBeGreaterThan(3);
  });

  it('is refused where the face misses a place between the ends of an arc', () => {
    const random = new Random(12);
    let between = 0;
    for (let i = 0; i < 300; i++) {
      const { chain, rake, shear } = shearedCase(random);
      for (const c of splitAtExtremes(chain).filter(({ turn }) => turn !== 0)) {
        const points = Array.from({ length: 101 }, (_, k) => pointAlong(c, k / 100, arcAngle(c)));
        // The least by which the circle of a place stands clear of the face's own distance from the axis.
        const least = (face: KnifeFace, some: typeof points) =>
          Math.min(...some.map(({ x, y }) => face.radius + y - Math.abs(faceOffset(face, x))));
        for (let diameter = 10; diameter < 90; diameter += 0.2) {
          const face = knifeFace({ cuttingDiameter: diameter, rake, shear });
          if (least(face, [points[0]!, points[100]!]) < 0.01) continue;
          // Both ends are reached; now what lies between decides.
          const reached = least(face, points);
          if (reached < -0.01) between++;
          if (Math.abs(reached) > 0.01)
            expect(faceReach({ chain: [c], tipStation: 0, tipReach: 0, tilt: 0 }, face).reaches).toBe(reached > 0);
          if (reached > 0.01) break;
        }
      }
    }
    expect(between).toBeGreaterThan(5);
  });
});
