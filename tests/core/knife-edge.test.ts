import { type Chain, upperEnvelope } from '@fielded/geometry';
import { describe, expect, it } from 'vitest';
import { leastBackClearance } from '../../packages/core/src/knife/edge-clearance.ts';
import { faceReach } from '../../packages/core/src/knife/face-reach.ts';
import { knifeFace, knifePoint } from '../../packages/core/src/knife/knife-face.ts';
import { makeLimiter } from '../../packages/core/src/knife/limiter.ts';
import { limiterProfile, sideGap } from '../../packages/core/src/knife/limiter-profile.ts';
import { edgeOrdinates, steelOrdinates } from '../../packages/core/src/knife/ordinates.ts';
import { seeProfile } from '../../packages/core/src/knife/seen-profile.ts';
import { AS_DRAWN, setSteel } from '../../packages/core/src/knife/set-steel.ts';
import { profileChain } from '../../packages/core/src/profile/chain.ts';
import { arcAngle, pointAlong } from '../../packages/geometry/src/curve/along.ts';
import { arc, type Curve, line } from '../../packages/geometry/src/curve/curve.ts';
import { raiser, randomHead } from '../support/heads.ts';
import { Random } from '../support/random.ts';
import { randomProfile } from '../support/random-job.ts';
import { trials } from '../support/trials.ts';

function placesOn(chain: Chain, count: number): { x: number; y: number }[] {
  return chain.flatMap((c) => {
    const angle = arcAngle(c);
    return Array.from({ length: count + 1 }, (_, i) => pointAlong(c, i / count, angle));
  });
}

function randomSeen(random: Random) {
  const tilt = random.oneOf([0, 0, Math.PI / 2, random.between(0.1, 1.4)]);
  const { steel } = setSteel(profileChain(randomProfile(random, 16)), AS_DRAWN, 1);
  return { seen: seeProfile(steel, tilt), tilt };
}

describe('ordinates', () => {
  it('keep every chord within 0.05 mm of the edge, through to both ends, on random knives', () => {
    const random = new Random(808);
    let made = 0;
    while (made < trials(80, 300)) {
      const { seen } = randomSeen(random);
      const face = knifeFace(randomHead(random));
      if (!faceReach(seen, face).reaches) continue;
      made++;
      const list = edgeOrdinates(seen.chain, face, random.oneOf([1, 25.4 / 32]));
      // The edge, place by place in its own order, against the chord it has got to.
      const edge = placesOn(seen.chain, 200).map(({ x, y }) => knifePoint(face, x, face.radius + y));
      if (edge[0]!.s > edge[edge.length - 1]!.s) edge.reverse();
      expect(list[0]!.s).toBeCloseTo(edge[0]!.s, 9);
      expect(list[0]!.t).toBeCloseTo(edge[0]!.t, 9);
      expect(list.at(-1)!.t).toBeCloseTo(edge.at(-1)!.t, 9);
      let at = 0;
      let worst = 0;
      for (const p of edge) {
        while (at < list.length - 2 && toChord(list[at]!, list[at + 1]!, p) > 0.05) at++;
        worst = Math.max(worst, toChord(list[at]!, list[at + 1]!, p));
      }
      expect(worst, `knife ${made}`).toBeLessThanOrEqual(0.05);
    }
  });
});

it('ordinates of a slope and of a round stand at every whole step between their ends', () => {
  const listOf = (c: Curve) => steelOrdinates({ chain: [c], tipStation: 0, tipReach: 0, tilt: 0 }, 1);
  // The slope falls by half of what it goes along; the round is of radius 6 about (4, 6).
  const slope = listOf(line(0.5, 0, 8.5, -4));
  expect(slope.map(({ s }) => s)).toEqual([0.5, 1, 2, 3, 4, 5, 6, 7, 8, 8.5]);
  for (const { s, t } of slope) expect(t).toBeCloseTo((s - 0.5) / 2, 9);
  const round = listOf(arc(4 - 3.6, 6 - 4.8, 4 + 3.6, 6 - 4.8, 4, 6, 1));
  for (const whole of [1, 2, 3, 4, 5, 6, 7]) {
    const t = round.find(({ s }) => s === whole)?.t;
    expect(t, `at ${whole}`).toBeCloseTo(Math.sqrt(36 - (whole - 4) ** 2) - 6, 9);
  }
});

type Steel = { readonly s: number; readonly t: number };

/** Distance from a chord. */
function toChord(a: Steel, b: Steel, p: Steel): number {
  const [vs, vt] = [b.s - a.s, b.t - a.t];
  const square = vs * vs + vt * vt;
  const along = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.s - a.s) * vs + (p.t - a.t) * vt) / square));
  return Math.hypot(p.s - a.s - along * vs, p.t - a.t - along * vt);
}

describe('a limiter', () => {
  it('lies nowhere in the rhombus about any place of the wood, and touches it, on 200 random profiles', () => {
    const random = new Random(909);
    const [gap, side] = [1.1, 0.2];
    for (let i = 0; i < 200; i++) {
      const { seen } = randomSeen(random);
      const limiter = limiterProfile(seen.chain, gap, side);
      const edge = placesOn(upperEnvelope([seen.chain]), 60);
      let nearest = Number.POSITIVE_INFINITY;
      for (const p of placesOn(limiter, 12)) {
        // How many rhombuses away the nearest place of the swept edge is.
        let away = Number.POSITIVE_INFINITY;
        for (const q of edge) away = Math.min(away, Math.abs(p.x - q.x) / side + Math.abs(p.y - q.y) / gap);
        nearest = Math.min(nearest, away);
      }
      expect(nearest, `case ${i}`).toBeGreaterThan(1 - 1e-6);
      expect(nearest).toBeLessThan(1.05);
    }
  });

  it('ends short of the flat, where one set back on the radius alone would run along it', () => {
    const rebate = { shape: 'rebate', reach: 20, depth: 8, land: 0, shoulder: 0, balance: 0.5 } as const;
    const { chain } = seeProfile(profileChain(rebate), 0);
    // The flat stands square to the spindle at the tip's own station.
    expect(Math.max(...chain.map((c) => c.x0))).toBe(0);
    expect(Math.max(...limiterProfile(chain, 1.1, 0.2).map((c) => c.x0))).toBeCloseTo(-0.2, 9);
  });

  it('is the knife’s own where there is no gap, or where the edge is as wide as a line', () => {
    const { chain } = seeProfile(
      profileChain({ shape: 'rebate', reach: 20, depth: 8, land: 0, shoulder: 0, balance: 0.5 }),
      0,
    );
    expect(limiterProfile(chain, 0, 0.2)).toEqual(chain);
    const upright = [line(0, 0, 0, 8)];
    expect(limiterProfile(upright, 1.1, sideGap(1.1, 0))).toEqual(upright);
  });

  it('stands back by the gap on the radius, and along the steel by more the nearer it is to the axis', () => {
    const slope = { shape: 'bevel', reach: 30, depth: 12, land: 0, shoulder: 0, balance: 0.5 } as const;
    const face = knifeFace(raiser);
    const { gap } = makeLimiter(seeProfile(profileChain(slope), 0), face, 1.1, 1)!;
    expect([gap.least, gap.most]).toEqual([expect.closeTo(1.1, 9), expect.closeTo(1.1, 9)]);
    // By Pythagoras on the face, 80·sin 18° off the axis: the knife's points cut at radii from 80 down to 50.
    const up = (radius: number) => Math.sqrt(radius ** 2 - face.offset ** 2);
    const along = (radius: number) => up(radius) - up(radius - 1.1);
    expect(gap.alongFace.least).toBeGreaterThanOrEqual(along(80) - 1e-9);
    expect(gap.alongFace.least).toBeLessThan(along(78));
    expect(gap.alongFace.most).toBeLessThanOrEqual(along(50) + 1e-9);
    expect(gap.alongFace.most).toBeGreaterThan(along(52));
  });
});

it('behind the edge there is least room where the knife cuts nearest to the axis', () => {
  const rebate = { shape: 'rebate', reach: 20, depth: 8, land: 0, shoulder: 0, balance: 0.5 } as const;
  const { least } = leastBackClearance(seeProfile(profileChain(rebate), 0), knifeFace(raiser), raiser);
  // At a radius of 60 the face of a head of 80 and 18° has a rake of asin(80·sin 18° / 60); the wedge takes 45° of what is left.
  const rake = Math.asin((80 * Math.sin(Math.PI / 10)) / 60);
  expect(least).toBeCloseTo(Math.PI / 4 - rake, 9);
});
