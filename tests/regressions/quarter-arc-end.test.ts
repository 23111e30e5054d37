// An ogee whose arcs are exact quarter circles, set off its drawn place, ended a rounding error past the level of the arc's
// centre; the arc was then followed once more round the circle, and the section had wood where there was none.
import { evaluate, type Job } from '@fielded/core';
import { expect, it } from 'vitest';
import { findFaults } from '../fuzz/fuzz-jobs.ts';

const job: Job = {
  title: 'quarter arcs',
  units: 'mm',
  panel: { thickness: 23, measured: 22.976920108124613, sawn: 'flat' },
  frame: { thickness: 27, groove: { width: 8, depth: 12, setback: 5 }, swellGap: 1 },
  cuts: [
    {
      name: 'ogee',
      side: 'back',
      profile: {
        shape: 'ogee',
        reach: 6.4519592578124545,
        depth: 7.105277411295101,
        land: 0,
        shoulder: 0.6533181534826468,
        balance: 0.8402347208932043,
      },
      depth: 8.411898215899381,
      reach: 6.489846485781184,
      run: 'over',
      tilt: 0.5549996098736302,
    },
  ],
  fit: { target: 0.2, snug: 0.05, loose: 0.5 },
  doors: [],
};

it('an arc that ends at the level of its centre ends there, on whichever side rounding puts it', () => {
  expect(findFaults(job, 393)).toEqual([]);
  expect(evaluate(job).problems.map(({ code }) => code)).not.toContain('split-edge');
});
