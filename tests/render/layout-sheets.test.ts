import { sheets } from '@fielded/render';
import { expect, test } from 'vitest';
import { trials } from '../support/trials.ts';
import { layoutFaults } from './layout-faults.ts';
import { randomReport } from './random-report.ts';

test('sheets of random jobs', { timeout: 120_000 }, () => {
  const faults: string[] = [];
  for (let seed = 1; seed <= trials(60, 300); seed += 1) {
    for (const sheet of sheets(randomReport(seed), { view: 'sheet', paper: 'a3' })) {
      for (const fault of layoutFaults(sheet)) faults.push(`${seed}: ${fault}`);
    }
  }
  expect(faults).toEqual([]);
});
