// Texts as large as are read, made to be slow: each is answered in half of the two seconds that docs/job-file.md gives it,
// counted as processor time, and no line of the answer is as long as the file.
import { type Fault, readJob } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { leastProcessorTime } from '../support/timing.ts';
import { SOUND } from './job-texts.ts';

const MOST_SECONDS = 1;
const LONGEST_LINE = 1300;

const TEXTS: [string, string][] = [
  ['commas and values in a list', `a: [${',,1'.repeat(333_000)}]`],
  ['200,000 commas in a group', `a: {${','.repeat(200_000)}}`],
  ['a million quotes', '"'.repeat(999_990)],
  ['120,000 texts that nothing parts', '"a" '.repeat(120_000)],
  ['quotes on one line', `a: { b: '${"1'-".repeat(330_000)}`],
  ['lines that are no key', `a: "${'\\\n'.repeat(330_000)}"`],
  ['directives', '%a\n'.repeat(120_000)],
  ['documents', '---\n'.repeat(120_000)],
  ['tags and aliases', '- !a\n- *a\n'.repeat(31_000)],
  ['unknown keys', SOUND + Array.from({ length: 34_000 }, (_, i) => `k${i}: 1\n`).join('')],
  ['a key as long as the file', `${SOUND}? ${'a'.repeat(900_000)}\n: 1\n`],
  ['a name as long as the file', SOUND.replace(/title: .*/, `title: ${'a'.repeat(900_000)}`)],
  [
    'strokes of no length',
    SOUND.replace(/profile: .*/, `profile: { shape: outline, path: "M0 9L${'1 '.repeat(450_000)}" }`),
  ],
  ['empty lines', '\n'.repeat(999_990)],
];

describe('a text made to be slow', () => {
  it.each(TEXTS)('%s', (_, text) => {
    let faults: readonly Fault[] = [];
    const read = () => {
      ({ faults } = readJob(text));
    };
    const most = MOST_SECONDS * 1000;
    expect(leastProcessorTime(read, most), 'ms of processor time').toBeLessThan(most);
    expect(faults.length).toBeGreaterThan(0);
    for (const { message } of faults) expect(message.length).toBeLessThan(LONGEST_LINE);
  });
});

describe('panels of all doors', () => {
  const doors = (quantity: number, across: number) =>
    readJob(
      `${SOUND}doors:\n  - { name: a, quantity: ${quantity}, width: 9000, height: 716, stile: 60, rail: 60, across: ${across}, muntin: 30 }\n`,
    ).faults.map(({ message }) => message);

  it('are worked out up to 50,000, and refused beyond by their number alone', () => {
    expect(doors(10_000, 5)).toEqual([]);
    expect(doors(10_000, 6)).toEqual([
      'doors: they have 60000 panels in all, and up to 50000 are worked out. Put doors into several jobs, or check their quantities.',
    ]);
  });
});
