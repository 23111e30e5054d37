import type { NamedProfile } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { faceReach } from '../../packages/core/src/knife/face-reach.ts';
import { cuttingPoint, knifeFace, knifePoint } from '../../packages/core/src/knife/knife-face.ts';
import { curveToCut, seeProfile, toCut } from '../../packages/core/src/knife/seen-profile.ts';
import { steelCurve, steelOutline } from '../../packages/core/src/knife/steel-outline.ts';
import { woodProfile } from '../../packages/core/src/knife/wood-profile.ts';
import { profileChain } from '../../packages/core/src/profile/chain.ts';
import { arcAngle, pointAlong } from '../../packages/geometry/src/curve/along.ts';
import { flipCurve } from '../../packages/geometry/src/curve/curve.ts';
import { DEGREE, raiser, randomHead } from '../support/heads.ts';
import { Random } from '../support/random.ts';
import { randomProfile } from '../support/random-job.ts';

const ogee: NamedProfile = { shape: 'ogee', reach: 38, depth: 9, land: 11, shoulder: 1.5, balance: 0.5 };

describe('wood to knife to wood', () => {
  it('comes back to 1e-9 mm for 2,500 random profiles on random heads, at any presentation', () => {
    const random = new Random(77);
    let worst = 0;
    let made = 0;
    while (made < 2500) {
      const face = knifeFace(randomHead(random));
      const tilt = random.oneOf([0, Math.PI / 2, random.between(0.02, 1.55)]);
      const chain = profileChain(randomProfile(random, 18));
      const seen = seeProfile(chain, tilt);
      if (!faceReach(seen, face).reaches) continue;
      made++;
      seen.chain.forEach((c, k) => {
        for (const u of [0, 0.37, 1]) {
          const { x, y } = pointAlong(c, u, arcAngle(c));
          const back = cuttingPoint(face, knifePoint(face, x, face.radius + y));
          worst = Math.max(worst, Math.abs(back.station - x), Math.abs(back.radius - face.radius - y));
          const drawn = pointAlong(chain[k]!, u, arcAngle(c));
          const placed = toCut(seen, back.station, back.radius - face.radius);
          worst = Math.max(worst, Math.hypot(placed.a - drawn.x, placed.b - drawn.y));
        }
      });
    }
    expect(worst).toBeLessThan(1e-9);
  });

  it('reads an outline off the steel: the wood of the knife of an ogee is the ogee, to the fit', () => {
    const drawn = denselyAlong(ogee);
    for (const [tilt, shear] of [
      [0, 0],
      [Math.PI / 2, 0],
      [0, 8],
    ] as const) {
      const head = { ...raiser, shear: shear * DEGREE };
      const seen = seeProfile(profileChain(ogee), tilt);
      const outline = steelOutline(seen, knifeFace(head), 0, 1e-4).chain.map((c) => flipCurve(c, 0));
      const chain = outline.map((c) => curveToCut(seen, c));
      const wood = woodProfile({ shape: 'outline', reach: 38, depth: 9, chain }, head, tilt);
      expect(wood.reach).toBeCloseTo(38, 6);
      expect(wood.depth).toBeCloseTo(9, 6);
      for (const c of wood.chain) {
        const { x, y } = pointAlong(c, 0.5, arcAngle(c));
        const away = Math.min(...drawn.map((p) => Math.sqrt((p.x - x) ** 2 + (p.y - y) ** 2)));
        expect(away).toBeLessThan(0.02);
      }
    }
  });

  it('gives the wood less reach than the steel is long', () => {
    const wood = woodProfile(ogee, raiser, 0);
    const edge = wood.chain[0]!;
    // 38 mm along the face from the tip of R = 80 at 18° lies at r = √((80·cos 18° − 38)² + (80·sin 18°)²).
    const radius = Math.hypot(80 * Math.cos(18 * DEGREE) - 38, 80 * Math.sin(18 * DEGREE));
    expect(edge.x0).toBeCloseTo(38 - (80 - radius), 9);
    expect(edge.y0).toBe(9);
  });
});

function denselyAlong(profile: NamedProfile): { x: number; y: number }[] {
  return profileChain(profile).flatMap((c) =>
    Array.from({ length: 2001 }, (_, i) => pointAlong(c, i / 2000, arcAngle(c))),
  );
}

describe('laws of the knife', () => {
  it('more rake never shortens any place of the edge', () => {
    const random = new Random(5);
    for (let i = 0; i < 300; i++) {
      const head = { ...randomHead(random), shear: 0 };
      const less = knifeFace(head);
      const more = knifeFace({ ...head, rake: head.rake + random.between(0, 8) * DEGREE });
      const seen = seeProfile(profileChain(randomProfile(random, 16)), random.oneOf([0, Math.PI / 2]));
      if (!faceReach(seen, more).reaches) continue;
      for (const c of seen.chain) {
        const [short, long] = [steelCurve(c, less), steelCurve(c, more)];
        for (const u of [0, 0.25, 0.5, 0.75, 1]) expect(long(u).y).toBeGreaterThanOrEqual(short(u).y - 1e-12);
      }
    }
  });

  it('a knife is never shorter than the wood is deep, and longer with any rake', () => {
    const face = knifeFace(raiser);
    for (const radius of [79, 70, 60, 42]) expect(knifePoint(face, 0, radius).t).toBeGreaterThan(80 - radius);
  });

  it('no rake and no shear give the mirrored profile exactly', () => {
    const random = new Random(9);
    for (let i = 0; i < 200; i++) {
      const tilt = random.oneOf([0, Math.PI / 2]);
      const chain = profileChain(randomProfile(random, 16));
      const seen = seeProfile(chain, tilt);
      const face = knifeFace({ cuttingDiameter: 200, rake: 0, shear: 0 });
      const { chain: steel, deviation } = steelOutline(seen, face);
      expect(deviation).toBe(0);
      steel.forEach((c, k) => {
        const drawn = chain[k]!;
        const [station, reach] = tilt === 0 ? [drawn.y0, drawn.x0] : [drawn.x0, drawn.y0];
        expect(c.x0).toBe(station - seen.tipStation);
        expect(c.y0).toBeCloseTo(seen.tipReach - reach, 12);
        expect(c.r).toBe(drawn.r);
      });
    }
  });
});
