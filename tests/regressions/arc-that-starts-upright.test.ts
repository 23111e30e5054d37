// An arc that starts upright, its start a rounding error on the other side of its centre, had a height of Infinity a hair in from there.
import { expect, it } from 'vitest';
import { arc } from '../../packages/geometry/src/curve/curve.ts';
import { heightAt } from '../../packages/geometry/src/curve/piece.ts';

it.each([1, -1] as const)(
  'has a height between its ends at every place, however near to its start (turn %i)',
  (turn) => {
    const y = 5.199999999999998;
    const cy = y - turn * 8.9e-16;
    const piece = arc(0, y, 1.64, cy - turn * 1.64, 1.64, cy, turn);
    for (const x of [5e-324, 4e-323, 1e-300, 1e-40, 1e-20, 1e-12, 1e-6]) {
      const away = Math.abs(heightAt(piece, x) - y);
      // By Pythagoras: the root of 2·r·x - x², which is off by the rounding of the ends.
      expect(Math.abs(away - Math.sqrt(2 * 1.64 * x - x * x))).toBeLessThan(2e-15);
    }
  },
);
