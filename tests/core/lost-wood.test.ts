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
});
