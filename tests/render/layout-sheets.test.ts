import { sheets } from '@fielded/render';
import { expect, test } from 'vitest';
import { layoutFaults } from './layout-faults.ts';
import { randomReport } from './random-report.ts';

test('sheet: 300 random jobs', { timeout: 120_000 }, () => {
  const faults: string[] = [];
  for (let seed = 1; seed <= 300; seed += 1) {
    for (const sheet of sheets(randomReport(seed), { view: 'sheet', paper: 'a3' })) {
      for (const fault of layoutFaults(sheet)) faults.push(`${seed}: ${fault}`);
    }
  }
  expect(faults).toEqual([]);
});
