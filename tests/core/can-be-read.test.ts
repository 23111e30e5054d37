// What solving and advice take for readable is what reading takes: a setting is tried if and only if it could be written to the file.
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createJobReader, evaluate, type FileValue, readFileData, readJob, writeValues } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { canBeRead } from '../../packages/core/src/job/can-be-read.ts';
import { needSetting, settingNames } from '../../packages/core/src/solve/settings.ts';
import { solve } from '../../packages/core/src/solve/solve.ts';
import { writeInto } from '../support/job-data.ts';
import { Random } from '../support/random.ts';

const examples = fileURLToPath(new URL('../../examples', import.meta.url));
const JOBS = readdirSync(examples, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('job.yaml'));

/** A job with everything that a setting of the groove can break: doors of many parts, gaps at the ends, an edge worked behind. */
const FULL = `fielded: 1
panel: { thickness: 20, measured: 20.3, film: 0.05 }
frame:
  thickness: 22
  groove: { width: 6.4, depth: 11, setback: 7.5 }
  swellGap: 2
  endGap: 4
  backEdge: { shape: bevel, reach: 5, depth: 5 }
cuts:
  - { name: raise, side: front, profile: { shape: ogee, reach: 38, depth: 9, land: 11, shoulder: 1.5 } }
  - { name: relief, side: back, run: over, profile: { shape: cove, reach: 14, depth: 4.8, land: 9 } }
doors:
  - { width: 500, height: 900, stile: 60, rail: 70, up: 3, midRail: 30 }
  - { width: 900, height: 900, stile: 60, rail: 70, topRail: 40, across: 2, muntin: 28 }
`;
const TEXTS: readonly (readonly [string, string])[] = [
  ['a full job', FULL],
  ...JOBS.map((name) => [name, readFileSync(join(examples, name), 'utf8')] as const),
];

describe('what can be read', () => {
  it.each(TEXTS)('of %s is what reading says', (name, text) => {
    const loadShop = (path: string) => readFileSync(join(examples, dirname(name), path), 'utf8');
    const job = readJob(text, { loadShop }).job!;
    expect(canBeRead(job)).toBe(true);
    const random = new Random(11);
    const differences: string[] = [];
    let refused = 0;
    // Two values of each setting go through the file's text, the others into what stands there.
    const data = readFileData(text).value as { readonly shop?: string };
    const shop = data.shop === undefined ? undefined : readFileData(loadShop(data.shop)).value;
    const readAgain = createJobReader();
    const faultsIn = (writes: readonly FileValue[], through: 'text' | 'data') => {
      if (through === 'data')
        return readAgain(
          writes.reduce<unknown>((file, { path, mm }) => writeInto(file, path, `${mm} mm`), data),
          shop,
        ).faults;
      const written = writeValues(text, writes, job.units);
      if ('text' in written === false) throw new Error(`${name}: ${JSON.stringify(writes)} could not be written`);
      return readJob(written.text, { loadShop }).faults;
    };
    for (const by of settingNames(job)) {
      const setting = needSetting(job, by);
      for (let turn = 0; turn < 6; turn++) {
        const mm = Math.round(random.between(setting.least, Math.min(setting.most, 3 * setting.now + 5)) * 1e4) / 1e4;
        const faults = faultsIn(setting.writes(mm), turn < 2 ? 'text' : 'data');
        if (faults.length > 0) refused++;
        if (canBeRead(setting.set(mm)) !== (faults.length === 0))
          differences.push(`${by} of ${mm} mm: ${faults.map(({ message }) => message).join(' ')}`);
      }
    }
    expect(differences).toEqual([]);
    if (text === FULL) expect(refused).toBeGreaterThan(5);
  });
});

describe('the clearance solved for', () => {
  it('is the one that the report gives, with a film on the tongue and doors with mid rails alone', () => {
    const job = readJob(FULL).job!;
    const { setting } = solve(job, { for: 'clearance', value: 0.15, by: 'relief.depth' });
    const text = FULL.replace('name: relief,', `name: relief, depth: ${setting},`);
    const again = readJob(text).job!;
    expect(solve(again, { for: 'clearance', value: 0.15, by: 'relief.depth' }).change).toBe(0);
    expect(evaluate(again).fit.clearance).toBeCloseTo(0.15, 9);
  });
});
