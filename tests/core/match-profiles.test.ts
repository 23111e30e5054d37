// How far a knife's section is off the one wanted, at the reach where it comes nearest.
import { arc, type Chain, line } from '@fielded/geometry';
import { expect, it } from 'vitest';
import { depthsOf, leastDeviation } from '../../packages/core/src/knife/match-profiles.ts';

/** A rebate so deep and so far in. */
const rebate = (reach: number, depth: number): Chain => [line(0, depth, reach, depth), line(reach, depth, reach, 0)];

it.each([
  [38, 9],
  [17.3, 6.1],
  [0.1 + 0.2, 12],
])('a rebate %d in and %d deep is made by any other as deep, moved in by the difference', (reach, depth) => {
  for (const own of [11, 23.7, 40.1]) {
    const found = leastDeviation(depthsOf(rebate(reach, depth)), depthsOf(rebate(own, depth)));
    expect(found.reach).toBeCloseTo(reach, 9);
    expect(found.deviation).toBeLessThan(1e-9);
  }
});

it('a rebate is off by what it is too shallow', () => {
  const { reach, deviation } = leastDeviation(depthsOf(rebate(20, 9)), depthsOf(rebate(31, 7.5)));
  expect([reach, deviation]).toEqual([expect.closeTo(20, 6), expect.closeTo(1.5, 9)]);
});

it('a slope and a hollow with a step between them are found again where they were moved to', () => {
  const steps: Chain = [line(0, 9, 10.1, 7.3), line(10.1, 7.3, 10.1, 5), arc(10.1, 5, 15.1, 0, 15.1, 5, 1)];
  const moved = steps.map((c) => ({ ...c, x0: c.x0 + 0.7, x1: c.x1 + 0.7, cx: c.turn === 0 ? 0 : c.cx + 0.7 }));
  const found = leastDeviation(depthsOf(moved), depthsOf(steps));
  expect(found.reach).toBeCloseTo(15.8, 6);
  expect(found.deviation).toBeLessThan(1e-6);
});
