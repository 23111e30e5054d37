import { sheets } from '@fielded/render';
import { expect, test } from 'vitest';
import { trials } from '../support/trials.ts';
import { layoutFaults } from './layout-faults.ts';
import { randomReport } from './random-report.ts';

/** Jobs whose sheets are so full that blocks laid 4 mm into each other are seen to lie over each other. */
const TIGHT = [86, 181, 199, 250];

test('sheets of random jobs', { timeout: 120_000 }, () => {
  const faults: string[] = [];
  for (const seed of new Set([...Array.from({ length: trials(30, 300) }, (_, i) => i + 1), ...TIGHT])) {
    for (const sheet of sheets(randomReport(seed), { view: 'sheet', paper: 'a3' })) {
      for (const fault of layoutFaults(sheet)) faults.push(`${seed}: ${fault}`);
    }
  }
  expect(faults).toEqual([]);
});
