import type { Head, NamedProfile } from '@fielded/core';
import type { Chain, Curve } from '@fielded/geometry';
import { describe, expect, it } from 'vitest';
import { faceReach } from '../../packages/core/src/knife/face-reach.ts';
import { knifeFace } from '../../packages/core/src/knife/knife-face.ts';
import { seeProfile } from '../../packages/core/src/knife/seen-profile.ts';
import { steelOutline } from '../../packages/core/src/knife/steel-outline.ts';
import { profileChain } from '../../packages/core/src/profile/chain.ts';
import { arcAngle, pointAlong } from '../../packages/geometry/src/curve/along.ts';
import { DEGREE, randomHead } from '../support/heads.ts';
import { Random } from '../support/random.ts';
import { randomProfile } from '../support/random-job.ts';

type Vector = readonly [number, number, number];

const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const add = (...terms: readonly [number, Vector][]): Vector =>
  [0, 1, 2].map((k) => terms.reduce((sum, [by, v]) => sum + by * v[k]!, 0)) as unknown as Vector;

/** The steps of a full turn. */
const STEPS = 720;
const COSINES = Float64Array.from({ length: STEPS }, (_, i) => Math.cos((2 * Math.PI * i) / STEPS));
const SINES = Float64Array.from({ length: STEPS }, (_, i) => Math.sin((2 * Math.PI * i) / STEPS));

/**
 * Where a point of the steel passes, found by putting the knife in its head in three dimensions and turning it: nothing
 * here comes from the engine. The head turns anticlockwise about z. The face's up-direction u lies at the rake angle to
 * the radius through the tip, so that the face falls back from the tip; shear turns the edge's line about u.
 */
function revolve(head: Head, s: number, t: number): { along: number; out: number } {
  const z: Vector = [0, 0, 1];
  const tip: Vector = [head.cuttingDiameter / 2, 0, 0];
  const u: Vector = [Math.cos(head.rake), Math.sin(head.rake), 0];
  const edge = add([Math.cos(head.shear), z], [Math.sin(head.shear), cross(u, z)]);
  const p = add([1, tip], [s, edge], [-t, u]);
  // A full turn in steps: the farthest it gets along +x is its radius.
  let out = 0;
  for (let i = 0; i < STEPS; i++) out = Math.max(out, p[0] * COSINES[i]! - p[1] * SINES[i]!);
  const around = Math.hypot(p[0], p[1]);
  if (!(out > around * Math.cos(Math.PI / STEPS) - 1e-12 && out < around + 1e-12))
    throw new Error(`turned, it gets ${out} out; it stands ${around} out`);
  return { along: p[2], out: around };
}

function pointsOf(chain: Chain, perPiece: number): { x: number; y: number }[] {
  return chain.flatMap((c: Curve) => {
    const angle = arcAngle(c);
    return Array.from({ length: perPiece + 1 }, (_, i) => pointAlong(c, i / perPiece, angle));
  });
}

function distanceToPolyline(points: readonly { x: number; y: number }[], x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    const [vx, vy] = [b.x - a.x, b.y - a.y];
    const square = vx * vx + vy * vy;
    const along = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - a.x) * vx + (y - a.y) * vy) / square));
    least = Math.min(least, (x - a.x - along * vx) ** 2 + (y - a.y - along * vy) ** 2);
  }
  return Math.sqrt(least);
}

/** Greatest distance between the drawn section and what the revolved knife leaves, both ways. */
function sweepError(head: Head, profile: NamedProfile, tilt: number): number | undefined {
  const seen = seeProfile(profileChain(profile), tilt);
  const face = knifeFace(head);
  if (!faceReach(seen, face).reaches) return undefined;
  const outline = steelOutline(seen, face, 0, 2e-5);
  const swept = pointsOf(outline.chain, 60).map(({ x, y }) => {
    const { along, out } = revolve(head, x, y);
    return { x: along, y: out - head.cuttingDiameter / 2 };
  });
  const drawn = pointsOf(seen.chain, 400);
  const there = Math.max(...swept.filter((_, i) => i % 7 === 0).map((p) => distanceToPolyline(drawn, p.x, p.y)));
  const back = Math.max(...drawn.filter((_, i) => i % 29 === 0).map((p) => distanceToPolyline(swept, p.x, p.y)));
  return Math.max(there, back);
}

describe('a knife turned in three dimensions', () => {
  const ogee: NamedProfile = { shape: 'ogee', reach: 38, depth: 9, land: 11, shoulder: 1.5, balance: 0.5 };

  it.each([
    ['flat', 0, 0],
    ['flat', 0, 12],
    ['flat', 0, -12],
    ['on edge', 90, 0],
    ['on edge', 90, 15],
    ['at 35°', 35, 10],
  ])('sweeps the drawn ogee, %s (%f°), shear %f°, to 1e-4 mm', (_, tilt, shear) => {
    const head = { ...randomHead(new Random(3)), cuttingDiameter: 160, rake: 20 * DEGREE, shear: shear * DEGREE };
    expect(sweepError(head, ogee, tilt === 90 ? Math.PI / 2 : tilt * DEGREE)).toBeLessThan(1e-4);
  });

  it('sweeps 40 random profiles on random heads to 1e-4 mm', () => {
    const random = new Random(2024);
    let made = 0;
    for (let i = 0; made < 40; i++) {
      const tilt = random.oneOf([0, 0, Math.PI / 2, random.between(0.05, 1.5)]);
      const error = sweepError(randomHead(random), randomProfile(random, 16), tilt);
      if (error === undefined) continue;
      made++;
      expect(error, `case ${i}`).toBeLessThan(1e-4);
    }
  });

  it('would tell a knife ground to the drawn profile: 38 mm at 20° comes out more than 5 mm short', () => {
    const head = { ...randomHead(new Random(3)), cuttingDiameter: 160, rake: 20 * DEGREE, shear: 0 };
    const { out } = revolve(head, 0, 38);
    expect(38 - (80 - out)).toBeGreaterThan(4);
    const face = knifeFace(head);
    const longer = steelOutline(seeProfile(profileChain(ogee), 0), face).chain[0]!.y0;
    expect(longer - 38).toBeGreaterThan(5);
    expect(longer).toBeCloseTo(43.310975, 6);
  });
});
