// The README shows what the tool makes: its drawing is current, and the job file it prints is the example.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { evaluate, readJob } from '@fielded/core';
import { draw } from '@fielded/render';
import { expect, it } from 'vitest';

const read = (path: string) => readFileSync(fileURLToPath(new URL(`../../${path}`, import.meta.url)), 'utf8');
const example = read('examples/ogee-cove/job.yaml');

it('shows the drawing of its example as the tool makes it today', () => {
  const { job } = readJob(example);
  expect(read('README.md')).toContain('](docs/images/drawings/ogee-cove-joint.svg)');
  expect(draw(evaluate(job!), { view: 'joint' })).toBe(read('docs/images/drawings/ogee-cove-joint.svg'));
});

it('prints a job file that is the example', () => {
  const printed = read('README.md').match(/```yaml\n([\s\S]*?)```/)![1]!;
  expect(readJob(printed)).toEqual(readJob(example));
  expect(readJob(printed).faults).toEqual([]);
});
