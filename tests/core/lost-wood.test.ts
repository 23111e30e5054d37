// Wood that a drawing keeps and the turning knife takes: how much, and where and nowhere else.
import { readJob } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { findLostWood } from '../../packages/core/src/joint/lost-wood.ts';
import { depthTaken } from '../../packages/core/src/machining/datum.ts';
import { sweepCut } from '../../packages/core/src/machining/sweep.ts';

/** What is lost of an outline cut with the panel flat. */
function lostOf(path: string) {
  const { job, faults } = readJob(`fielded: 1
panel: { thickness: 20 }
frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 }
cuts:
  - { name: raise, side: front, profile: { shape: outline, path: "${path}" } }
`);
  expect(faults).toEqual([]);
  const [cut] = job!.cuts;
  return findLostWood(sweepCut(cut!, depthTaken(cut!, job!.panel)), 20, cut!.reach + 20);
}

describe('wood lost to a knife', () => {
  // By hand: with the panel flat the knife clears at every depth as far in as it is drawn to anywhere. From (20, 5) the drawing
  // goes down again to (26, 6), so what it keeps above 6 is lost: the triangle to (17.75, 6) on the slope from (11, 9) to (20, 5).
  it('is where the drawing goes down again, and nowhere else that it and the sweep lie on each other', () => {
    const lost = lostOf('M 0 9 L 11 9 L 20 5 L 26 6 L 38 1.5 V 0')!;
    expect(lost.area).toBeCloseTo((26 - 17.75) / 2, 9);
    expect(lost.fromEdge).toEqual([expect.closeTo(17.75, 9), expect.closeTo(26, 9)]);
    expect(lost.below).toEqual([expect.closeTo(5, 9), expect.closeTo(6, 9)]);
  });

  it('is nothing where the drawing never goes down again', () => {
    expect(lostOf('M 0 9 L 11 9 L 20 5 L 38 1.5 V 0')).toBeNull();
  });

  // Between x = a and a + 5 the drawing goes down again by `deep`: the triangle above is lost, its foot as far out as the slope of 0.25 says.
  const dip = (deep: number) => `M 0 9 L 8 7 L 13 ${7 + deep} L 38 0.75 V 0`;

  it('of 0.02 mm is told, and 0.004 mm is what a drawing is read within', () => {
    expect(lostOf(dip(0.02))!.area).toBeCloseTo((0.02 * (5 + 0.02 * 4)) / 2, 9);
    expect(lostOf(dip(0.004))).toBeNull();
  });

  it('is told patch by patch: two that are far apart do not thin each other', () => {
    const one = lostOf('M 0 9 L 8 7 L 9 7.02 L 38 0.5 V 0')!;
    const two = lostOf('M 0 9 L 8 7 L 9 7.02 L 30 3 L 31 3.02 L 38 0.5 V 0')!;
    expect(one.area).toBeGreaterThan(0.009);
    expect(two.area).toBeGreaterThan(1.9 * one.area);
    expect(two.fromEdge[0]).toBeCloseTo(one.fromEdge[0], 9);
    expect(two.fromEdge[1]).toBeCloseTo(31, 9);
  });
});
