import { evaluate, type Report, readJob } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { leastProcessorTime } from '../support/timing.ts';
import { inLongRun } from '../support/trials.ts';

const HEAD = `fielded: 1
panel: { thickness: 20, species: black cherry }
frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2, endGap: 1 }
cuts:
  - { name: raise, side: front, profile: { shape: ogee, reach: 38, depth: 9, land: 11, shoulder: 1.5 } }
`;

function faultsOf(doors: string): string[] {
  const { job, faults } = readJob(`${HEAD}doors:\n${doors}`);
  expect(job).toBeNull();
  return faults.map(({ code, at }) => `${code} ${at}`);
}

describe('doors from a file', () => {
  it('whose openings do not fill it are to get larger ones, and those that overrun it smaller ones', () => {
    const remedies = ['[60, 60]', '[300, 300]'].map((columns) => {
      const door = `- { width: 400, height: 700, stile: 60, rail: 60, muntin: 40, columns: ${columns} }`;
      return readJob(`${HEAD}doors:\n${door}`).faults.map(({ message }) => /Write (\w+) openings/.exec(message)?.[1]);
    });
    expect(remedies).toEqual([['larger'], ['smaller']]);
  });

  it('are filled by their openings to a hundredth, and counted once', () => {
    // 400 − 2·60 − 40 leave 240 for two openings.
    const door = (more: string) => `- { width: 400, height: 700, stile: 60, rail: 60, muntin: 40, ${more} }`;
    const read = (more: string) => readJob(`${HEAD}doors:\n${door(more)}`);
    for (const more of ['columns: [100, 140]', 'columns: [100, 140.005]', 'across: 2, columns: [100, 140]'])
      expect(read(more).faults, more).toEqual([]);
    expect(read('columns: [100, 139]').faults[0]!.message).toContain('come to 279 mm with what parts them, 1 mm less');
    expect(read('columns: [100, 141]').faults[0]!.message).toContain('come to 281 mm with what parts them, and 280 mm');
    expect(faultsOf(door('across: 3, columns: [100, 140]'))).toEqual(['key-not-used doors[0].across']);
    expect(faultsOf(door('up: 1, rows: [200, rest]'))).toEqual(['key-not-used doors[0].up']);
  });

  it('come from the opening of the carcase, a pair of leaves with a drawer front above', () => {
    const { job, faults } = readJob(`${HEAD}doors:
  - { name: pair, opening: { width: 900, height: 700 }, leaves: 2, stile: 60, rail: 60, quantity: 3 }
  - { name: drawer, opening: { width: 900, height: 180 }, hung: overlay, overlay: 12, stile: 45, rail: 45, grain: across }
`);
    expect(faults).toEqual([]);
    const [pair, drawer] = evaluate(job!).doors!;
    // By hand: (900 − 4 − 3)/2; 700 − 4; 446.5 − 120 + 2·9; 696 − 120 + 2·10.
    expect(pair).toMatchObject({ width: 446.5, height: 696, panel: { width: 344.5, height: 596 } });
    expect(pair!.panels[0]).toMatchObject({ quantity: 6, field: { width: 268.5, height: 520 } });
    expect(pair!.parts.find(({ part }) => part === 'stile')!.quantity).toBe(12);
    // The grain across: 924 − 90 + 2·10 along it, 204 − 90 + 2·9 across it.
    expect(drawer!.panel).toEqual({ width: 854, height: 132 });
  });

  it('take inches in an inch file, defaults included', () => {
    const text = HEAD.replace('fielded: 1', 'fielded: 1\nunits: in')
      .replace(/20, species/, '0.75, species')
      .replace('thickness: 22', 'thickness: 0.875')
      .replace(/width: 6.4, depth: 11, setback: 7.5/, 'width: 1/4, depth: 7/16, setback: 1/4')
      .replace('swellGap: 2, endGap: 1', 'swellGap: 1/8, endGap: 1/16')
      .replace('reach: 38, depth: 9, land: 11, shoulder: 1.5', 'reach: 1-1/2, depth: 3/8, land: 7/16');
    const { job, faults } = readJob(`${text}doors: [{ opening: { width: 12, height: 20 }, stile: 2, rail: 2 }]\n`);
    expect(faults).toEqual([]);
    expect(job!.doors[0]!.width).toBeCloseTo(12 * 25.4 - 4, 9);
  });

  it.each([
    ['- { width: 400, stile: 60, rail: 60 }', ['size-or-opening doors[0].height']],
    [
      '- { width: 400, height: 700, opening: { width: 400, height: 700 }, stile: 60, rail: 60 }',
      ['size-or-opening doors[0].width', 'size-or-opening doors[0].height'],
    ],
    ['- { width: 400, height: 700, gap: 3, stile: 60, rail: 60 }', ['key-not-used doors[0].gap']],
    [
      '- { opening: { width: 400, height: 700 }, hung: overlay, stile: 60, rail: 60 }',
      ['missing-key doors[0].overlay'],
    ],
    [
      '- { opening: { width: 8, height: 700 }, leaves: 2, gap: 3, stile: 60, rail: 60 }',
      ['door-too-small doors[0].opening.width'],
    ],
    ['- { width: 400, height: 700, stile: 60, rail: 60, muntin: 40, columns: [200, rest] }', []],
    [
      '- { width: 400, height: 700, stile: 60, rail: 60, muntin: 40, columns: [260, rest] }',
      ['openings-overrun doors[0].columns'],
    ],
    [
      '- { width: 400, height: 700, stile: 60, rail: 60, muntin: 40, rows: [200, 200] }',
      ['openings-overrun doors[0].rows'],
    ],
    [
      '- { width: 400, height: 700, stile: 60, rail: 60, muntin: 20, columns: [rest, rest] }',
      ['groove-through-part doors[0].muntin'],
    ],
    [
      '- { width: 400, height: 700, stile: 60, rail: 60, across: 3, muntin: 40, columns: [rest, rest] }',
      ['key-not-used doors[0].across'],
    ],
    [
      '- { width: 400, height: 700, stile: 60, rail: 60, columns: [wide] }',
      ['unknown-choice doors[0].columns[0]', 'not-a-length doors[0].columns[0]'],
    ],
  ])('%s', (door, wanted) => {
    if (wanted.length === 0) expect(readJob(`${HEAD}doors:\n  ${door}\n`).faults).toEqual([]);
    else expect(faultsOf(`  ${door}\n`)).toEqual(wanted);
  });

  // Each day the command is asked for as many, in tests/cli/hostile-size.test.ts.
  inLongRun('3,000 doors, the most, are reckoned with within 2 s', () => {
    const doors = Array.from(
      { length: 3000 },
      (_, i) => `  - { width: ${300 + (i % 400)}, height: ${500 + (i % 7) * 100}, stile: 60, rail: 60 }`,
    );
    const { job } = readJob(`${HEAD}doors:\n${doors.join('\n')}\n`);
    let report: Report | null = null;
    const took = leastProcessorTime(() => {
      report = evaluate(job!);
    }, 2000);
    expect(took).toBeLessThan(2000);
    expect(report).toHaveProperty('doors.length', 3000);
  });
});
