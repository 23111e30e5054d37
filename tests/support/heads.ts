import type { Head, Rules } from '@fielded/core';
import { DEFAULTS } from '../../packages/core/src/job/defaults.ts';
import type { Random } from './random.ts';

export const DEGREE = Math.PI / 180;

/** A head for tests: 160 mm circle, 18° of rake, no shear; the rest as in a shop's file. */
export const raiser: Head = {
  cuttingDiameter: 160,
  bodyDiameter: 70,
  height: 40,
  rake: 18 * DEGREE,
  shear: 0,
  wedge: 45 * DEGREE,
  knives: 2,
  limiterGap: 1.1,
  maxSpeed: 8000,
  knifeThickness: 8,
  feed: 'hand',
  jointed: false,
};

export const rules: Rules = {
  ...DEFAULTS.rules,
  leastSideClearance: 3 * DEGREE,
  leastClearance: 10 * DEGREE,
};

/** A head of any make: some square to the axis, most with rake, half with shear either way. */
export function randomHead(random: Random): Head {
  return {
    ...raiser,
    cuttingDiameter: random.between(80, 220),
    rake: random.unit() < 0.1 ? 0 : random.between(0, 30) * DEGREE,
    shear: random.unit() < 0.5 ? 0 : random.between(-25, 25) * DEGREE,
  };
}
