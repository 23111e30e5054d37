// Found by spoiling the bytes of an example: a door whose stile was no key any more threw while its room was checked.
import { readJob } from '@fielded/core';
import { expect, it } from 'vitest';
import { SOUND } from '../core/job-texts.ts';

it.each([
  'doors: [{ name: B, width: 812, height: 1340, !stile: 70, rail: 85, across: 2, up: 2, muntin: 60 }]',
  'doors: [{ width: 812, height: 1340, stile: 70, rail: wide, up: 2, muntin: 60 }]',
  'doors: [{ width: 812, height: , stile: 70, rail: 70, rows: [rest, 300], midRail: 60 }]',
  'doors: [{ width: 812, height: 1340, stile: 70, rail: 70, columns: [rest, x], muntin: 60 }]',
])('a door without one of its sizes has that fault and throws nothing: %s', (doors) => {
  const { job, faults } = readJob(`${SOUND}${doors}\n`);
  expect(job).toBeNull();
  expect(faults.length).toBeGreaterThan(0);
  for (const { message } of faults) expect(message).not.toContain('NaN');
});
