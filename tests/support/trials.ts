import { describe, it } from 'vitest';

/** Whether everything is gone through, which takes twice as long: `npm run test:long`, before a release. */
export const LONG_RUN = process.env.TRIALS === 'all';

/**
 * How many random cases a test tries: few each day, chosen so that the faults that it is for are still found, and all with
 * `npm run test:long`, before a release.
 */
export function trials(few: number, all: number): number {
  return LONG_RUN ? all : few;
}

/**
 * A test, or several, for `npm run test:long` alone: the dearest of those that say again, for another device, program or size,
 * what a test of each day says too. A daily run ends with their names (`tests/support/left-out.ts`).
 */
export const inLongRun = LONG_RUN ? it : it.skip;
export const describeInLongRun = LONG_RUN ? describe : describe.skip;
