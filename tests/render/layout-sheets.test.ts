import { sheets } from '@fielded/render';
import { expect, test } from 'vitest';
import { trials } from '../support/trials.ts';
import { layoutFaults } from './layout-faults.ts';
import { randomReport } from './random-report.ts';

/**
 * Jobs that notice what few others do. 86 to 250: blocks laid 4 mm into each other. 67: texts laid over arrows. 30: tiers that what is
 * laid later does not see. With the first twelve they notice all of seven faults that all 300 notice: these three, texts laid over
 * texts or outlines, leaders that later ones do not see, lines not interrupted for texts.
 */
const TELLING = [30, 67, 86, 181, 199, 250];

test('sheets of random jobs', { timeout: 120_000 }, () => {
  const faults: string[] = [];
  for (const seed of new Set([...Array.from({ length: trials(12, 300) }, (_, i) => i + 1), ...TELLING])) {
    for (const sheet of sheets(randomReport(seed), { view: 'sheet', paper: 'a3' })) {
      for (const fault of layoutFaults(sheet)) faults.push(`${seed}: ${fault}`);
    }
  }
  expect(faults).toEqual([]);
});
