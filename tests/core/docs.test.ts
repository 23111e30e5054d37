import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { DEFAULTS } from '../../packages/core/src/job/defaults.ts';
import { readJob, readShop } from '../../packages/core/src/reading/read.ts';
import { buildSchemas } from '../../packages/core/tools/json-schema.ts';
import { broken, SOUND } from './job-texts.ts';

const DOCS = readFileSync(new URL('../../docs/job-file.md', import.meta.url), 'utf8');
const blocks = [...DOCS.matchAll(/```yaml\n([\s\S]*?)```/g)].map((match) => match[1]!);

/** Every key that a schema knows, however deep. */
function keysOf(schema: unknown): string[] {
  if (typeof schema !== 'object' || schema === null) return [];
  return Object.entries(schema).flatMap(([key, value]) => [
    ...(key === 'properties' ? Object.keys(value as object) : []),
    ...keysOf(value),
  ]);
}

it('shows a job, a profile and a shop that are read without a fault', () => {
  const [job, profile, shop] = blocks as [string, string, string];
  expect(readJob(job).faults).toEqual([]);
  const raise = 'profile: { shape: ogee, reach: 38, depth: 9, land: 11, shoulder: 1.5 }';
  expect(readJob(broken(raise, profile.trim())).faults).toEqual([]);
  expect(readShop(shop).faults).toEqual([]);
  expect(SOUND).toContain(raise);
});

it.each(Object.entries(buildSchemas()))('describes every key of %s', (_, schema) => {
  const keys = new Set(keysOf(JSON.parse(schema)));
  expect(keys.size).toBeGreaterThan(25);
  expect([...keys].filter((key) => !new RegExp(`\`${key}\``).test(DOCS))).toEqual([]);
});

it('states the defaults there are', () => {
  const row = (key: string) => DOCS.split('\n').find((line) => new RegExp(`^\\|[^|]*\`${key}\``).test(line))!;
  for (const [key, value] of Object.entries(DEFAULTS.fit)) expect(row(key)).toContain(`| ${value} mm |`);
  for (const key of ['title', 'balance', 'wedge', 'knives', 'limiterGap'] as const)
    expect(row(key)).toContain(`| ${DEFAULTS[key]}${key === 'limiterGap' ? ' mm' : ''} |`);
  for (const key of ['units', 'sawn', 'run', 'feed', 'reversing', 'jointed', 'pinned'] as const)
    expect(row(key)).toContain(`| \`${DEFAULTS[key]}\` |`);
  const rules = Object.entries(DEFAULTS.rules).filter(([key]) => key !== 'rimSpeed');
  expect(rules.length).toBeGreaterThan(15);
  for (const [key, value] of rules) expect(row(key)).toMatch(new RegExp(`\\| ${value}( mm)? \\|`));
});
