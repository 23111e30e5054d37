// A depth of 4.81e-309 mm was read as a depth, and the radius of its cove grew past what a number holds: a figure of the
// report was then no number. And an arc that rises by next to nothing has a radius so large that its height, reckoned from
// its centre, was off by hundredths of a millimetre.
import { evaluate, readJob } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { profileChain } from '../../packages/core/src/profile/chain.ts';
import { heightAt } from '../../packages/geometry/src/curve/piece.ts';

describe('a length next to nothing', () => {
  it('is nothing, and no depth', () => {
    const text = `fielded: 1
panel: { thickness: 20 }
frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 }
cuts: [{ side: back, profile: { shape: cove, reach: 14, depth: 4.81e-309, land: 9 } }]`;
    expect(readJob(text).faults.map(({ at, code }) => ({ at, code }))).toEqual([
      { at: 'cuts[0].profile.depth', code: 'out-of-range' },
    ]);
  });

  it.each([1e-3, 1e-6, 1e-9, 1e-12])('an ogee that rises %d mm keeps its height to 1e-12 mm all the way', (rise) => {
    const [, hollow, round] = profileChain({
      shape: 'ogee',
      reach: 40,
      depth: 5 + rise,
      land: 10,
      shoulder: 5,
      balance: 0.5,
    });
    // The parabola of an arc as flat as this, to its own fourth order: far below 1e-12.
    const drop = (x: number) => (x - 10) ** 2 / (2 * hollow!.r);
    for (const x of [12, 17.5, 24]) {
      // In cut coordinates the hollow runs left to right on the upper half of its circle.
      expect(Math.abs(heightAt(hollow!, x) - (5 + rise - drop(x)))).toBeLessThan(Math.max(1e-12, rise ** 3));
    }
    expect(round!.turn).toBe(1);
  });

  it('a raise that hardly rises takes what a rebate of its depth would, less half the rise', () => {
    const shape = (profile: string) => {
      const { job } = readJob(`fielded: 1
panel: { thickness: 20 }
frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 }
cuts: [{ side: front, profile: ${profile} }]`);
      return evaluate(job!).section.removedArea;
    };
    const ogee = shape('{ shape: ogee, reach: 40, depth: 9, land: 10, shoulder: 8.99999999 }');
    expect(shape('{ shape: rebate, reach: 40, depth: 9 }') - ogee).toBeCloseTo((30 * 1e-8) / 2, 9);
  });
});
