import { describe, expect, it } from 'vitest';
import { faceReach } from '../../packages/core/src/knife/face-reach.ts';
import { cuttingPoint, knifeFace } from '../../packages/core/src/knife/knife-face.ts';
import { seeProfile } from '../../packages/core/src/knife/seen-profile.ts';
import { steelOutline } from '../../packages/core/src/knife/steel-outline.ts';
import { profileChain } from '../../packages/core/src/profile/chain.ts';
import { readOutline } from '../../packages/core/src/profile/read-outline.ts';
import { arcAngle, cornerAngle, pointAlong } from '../../packages/geometry/src/curve/along.ts';
import { DEGREE, raiser, randomHead } from '../support/heads.ts';
import { Random } from '../support/random.ts';
import { randomProfile } from '../support/random-job.ts';
import { leastProcessorTime } from '../support/timing.ts';

const face = knifeFace(raiser);

/** An ogee of 12 pieces as a scan or a rounded-off drawing gives it: its arcs do not quite share their tangents. */
const TWELVE =
  'M 0 9 H 11 A 26 26 0 0 0 14 8.8 A 25 25 0 0 0 17 8.2 A 24 24 0 0 0 20 7.2 A 22 22 0 0 0 22.5 6 A 20 20 0 0 0 24.5 5 A 24 24 0 0 1 27 3.8 A 26 26 0 0 1 30 2.7 A 27 27 0 0 1 33 2 A 27 27 0 0 1 35.5 1.65 A 26 26 0 0 1 38 1.5 V 0';

describe('the fitted outline of a knife', () => {
  it('of an ogee of 12 pieces has 12: between corners one arc holds', () => {
    const outline = readOutline(TWELVE, 'mm');
    if ('sentence' in outline) throw new Error(outline.sentence);
    const seen = seeProfile(outline.chain, 0);
    const { chain, deviation } = steelOutline(seen, face);
    expect(chain).toHaveLength(12);
    expect(deviation).toBeLessThanOrEqual(0.005);
    // Once the engine knows it.
    expect(leastProcessorTime(() => steelOutline(seen, face), 5, 20)).toBeLessThan(5);
  });

  it('of the named ogee takes 5 pieces flat: land, three arcs where smooth runs end at the tip’s corner, shoulder', () => {
    const ogee = profileChain({ shape: 'ogee', reach: 38, depth: 9, land: 11, shoulder: 1.5, balance: 0.5 });
    const { chain } = steelOutline(seeProfile(ogee, 0), knifeFace({ ...raiser, rake: 15 * DEGREE }));
    expect(chain.map((c) => c.turn !== 0)).toEqual([false, true, true, true, false]);
  });

  it('is smooth where the profile is and has its corners where the profile has them, within the tolerance measured apart', () => {
    const random = new Random(41);
    let made = 0;
    while (made < 150) {
      const head = randomHead(random);
      const tilt = random.oneOf([0, Math.PI / 2, random.between(0.05, 1.5)]);
      const profile = profileChain(randomProfile(random, 16));
      const seen = seeProfile(profile, tilt);
      const own = knifeFace(head);
      if (!faceReach(seen, own).reaches) continue;
      made++;
      const { chain, deviation } = steelOutline(seen, own);
      expect(deviation).toBeLessThanOrEqual(0.005);
      const corners = (list: typeof chain) => list.slice(1).filter((c, i) => cornerAngle(list[i]!, c) > 0.01).length;
      expect(corners(chain), `case ${made}`).toBe(corners(profile));
      // Back in the wood every fitted piece lies on the drawn profile, as near as the steel does times the stretch.
      const drawn = seen.chain.flatMap((c) =>
        Array.from({ length: 801 }, (_, i) => pointAlong(c, i / 800, arcAngle(c))),
      );
      for (const c of chain) {
        const { x, y } = pointAlong(c, 0.4, arcAngle(c));
        const { station, radius } = cuttingPoint(own, { s: x, t: y });
        const out = radius - own.radius;
        const near = drawn.map((p) => Math.hypot(p.x - station, p.y - out));
        const step = Math.max(...seen.chain.map((piece) => Math.hypot(piece.x1 - piece.x0, piece.y1 - piece.y0))) / 800;
        expect(Math.min(...near)).toBeLessThan(0.0051 + step);
      }
    }
  });
});
