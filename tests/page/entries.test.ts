// What is typed for a length: notations, sums and their refusals; steps; how the job is changed and written.
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseLength, readJob, solveByTwo } from '../../packages/core/src/index.ts';
import { answerAsked } from '../../packages/page/src/desk/asked.ts';
import { advance, beginHistory, redo, settle, undo } from '../../packages/page/src/desk/history.ts';
import { entryText } from '../../packages/page/src/entry/entry-text.ts';
import { readEntry } from '../../packages/page/src/entry/read-entry.ts';
import { nextStep, snap } from '../../packages/page/src/entry/steps.ts';
import { workOutSum } from '../../packages/page/src/entry/sums.ts';
import { writeJob } from '../../packages/page/src/files/write-job.ts';
import { type Data, getAt, pathOf, setAt } from '../../packages/page/src/job/data.ts';
import { EXAMPLE } from '../../packages/page/src/job/start.ts';
import { writeLength } from '../../packages/page/src/job/write-length.ts';
import type { AskSolver } from '../../packages/page/src/panels/fit/solve-beside.ts';
import { sayWhyNot } from '../../packages/page/src/panels/fit/why-not.ts';
import { KEYS } from '../../packages/page/src/shell/key-list.ts';

describe('a sum', () => {
  it.each([
    ['20 mm - 1/32 in', 'mm', 20 - 25.4 / 32],
    ['20mm-1/32in', 'mm', 20 - 25.4 / 32],
    ['(19 - 6.4) / 2', 'mm', 6.3],
    ['3 × 1-1/4"', 'mm', 3 * 31.75],
    ['3/4 in + 2 mm', 'in', 21.05],
    ['1-1/4 + 1/8', 'in', 34.925],
    ['2 - 1/4', 'in', 44.45],
    ['-(2 - 5)', 'mm', 3],
    ['10 mm / 4 mm', 'mm', 2.5],
    ['19,5 + 0,5', 'mm', 20],
    ['1\' - 1/2"', 'in', 292.1],
  ] as const)('%s shown in %s is worked out', (text, shown, mm) => {
    expect(workOutSum(text, shown)).toEqual({ mm: expect.closeTo(mm, 9) });
  });

  it.each([
    '2 mm * 3 mm',
    '2 / 3 mm',
    'cos(1) + 2',
    'import("x") + 1',
    'L0_ + 1',
    '1; 2 + 3',
    '[1 + 2]',
    '2 ^ 3 + 1',
    '5! + 1',
    'a = 1 + 2',
    '1 + ',
    '20 - 3/4',
    '1 / 0 + 2',
    `${'1 + '.repeat(100)}1`,
    '('.repeat(50),
  ])('%s is refused in words', (text) => {
    expect(workOutSum(text, 'mm')).toEqual({ message: expect.stringMatching(/\.$/) });
  });

  it('never throws and never gives what is no number, whatever is typed', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom(...'0123456789+-*/() .,"mLin_eE^!'.split('')), maxLength: 24 }),
        (text) => {
          const sum = workOutSum(text, 'in');
          expect('message' in sum || Number.isFinite(sum.mm)).toBe(true);
        },
      ),
      { numRuns: 500 },
    );
  });
});

it('the keys that are documented are those of the list on the page', () => {
  const docs = readFileSync(new URL('../../docs/page.md', import.meta.url), 'utf8');
  const [, table] = /\| Where \| Key \|.*\n\| --- .*\n((?:\|.*\n)+)/.exec(docs)!;
  const rows = table!.trimEnd().split('\n');
  expect(rows).toEqual(KEYS.map((row) => `| ${row.join(' | ')} |`));
});

describe('an entry', () => {
  it.each([
    ['19', 'mm', 'mm', 19, 19],
    ['19', 'mm', 'in', 19, '19 mm'],
    ['3/4', 'in', 'in', 19.05, '3/4'],
    ['3/4', 'in', 'mm', 19.05, '3/4 in'],
    ['1-1/4"', 'mm', 'mm', 31.75, '1-1/4"'],
    ['.5', 'in', 'in', 12.7, 0.5],
    ['19,5', 'mm', 'mm', 19.5, 19.5],
  ] as const)('%s shown in %s, in a file in %s', (text, shown, file, mm, written) => {
    expect(readEntry(text, shown, file)).toEqual({ kind: 'length', mm, written });
  });

  it('is told from a sum, and what is neither is explained', () => {
    expect(readEntry('1-1/4', 'in', 'in').kind).toBe('length');
    expect(readEntry('20 - 1', 'mm', 'mm').kind).toBe('sum');
    expect(readEntry('20-1', 'mm', 'mm').kind).toBe('sum');
    expect(readEntry('3/4', 'mm', 'mm')).toMatchObject({
      kind: 'fault',
      message: expect.stringContaining('Write 3/4 in.'),
    });
    expect(readEntry('thick', 'mm', 'mm').kind).toBe('fault');
    expect(readEntry('', 'mm', 'mm').kind).toBe('fault');
    // A sum that is still being typed is told so, whatever could be read of it.
    for (const text of ['4+', '(20 - 1) ×', '1-', '4 + 5 (', '3/'])
      expect(readEntry(text, 'in', 'mm')).toEqual({
        kind: 'fault',
        message: `${text} is not finished: a figure is to come.`,
      });
  });

  it('written by the page is read again as the same length, to a thousandth, in either unit', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 500, noNaN: true }),
        fc.constantFrom('mm', 'in'),
        fc.constantFrom('mm', 'in'),
        (mm, shown, file) => {
          const read = parseLength(String(writeLength(mm, shown, file)), file);
          expect('mm' in read && Math.abs(read.mm - mm)).toBeLessThan(0.00051);
          const typed = parseLength(entryText(mm, shown), shown);
          expect('mm' in typed && Math.abs(typed.mm - mm)).toBeLessThan(0.00051);
        },
      ),
    );
  });
});

describe('steps', () => {
  it('go to the next whole one, and a snap to the nearest', () => {
    expect(nextStep(6.4, 0.5, 1)).toBeCloseTo(6.5, 12);
    expect(nextStep(6.4, 0.5, -1)).toBeCloseTo(6, 12);
    expect(nextStep(6.5, 0.5, 1)).toBeCloseTo(7, 12);
    expect(snap(9.27, 0.1)).toBeCloseTo(9.3, 12);
  });
});

describe('a fit that cannot be had', () => {
  it('says what stands in the way, and what would do it: each tried', async () => {
    const job = readJob(JSON.stringify(EXAMPLE)).job!;
    const by = ['raise.depth', 'back relief.depth'] as const;
    const ask: AskSolver = async (asked) => answerAsked(asked as never);
    const said = await sayWhyNot(ask, job, solveByTwo(job, { for: 'face', value: 12, by }));
    const words = said.replaceAll('\u00A0', ' ');
    expect(words).toMatch(/^The face comes no nearer than [\d.]+ mm proud: the back relief is then down to nothing\./);
    const [, setback] = /the groove ([\d.]+) mm from the front of the frame/.exec(words)!;
    const nearer = { ...job, frame: { ...job.frame, groove: { ...job.frame.groove, setback: Number(setback) } } };
    expect(solveByTwo(nearer, { for: 'face', value: 12, by }).reason).toBeNull();
  });
});

describe('the job as data', () => {
  it('is changed without touching what it was, and undone and redone', () => {
    const before = JSON.stringify(EXAMPLE);
    const next = setAt(setAt(EXAMPLE, 'cuts[1].profile.depth', 5), 'spread.thickness', 0.1);
    expect(JSON.stringify(EXAMPLE)).toBe(before);
    expect(getAt(next, 'cuts[1].profile.depth')).toBe(5);
    expect(getAt(next, 'spread')).toEqual({ thickness: 0.1 });
    expect(getAt(setAt(next, 'cuts[0]', undefined), 'cuts[0].name')).toBe('back relief');
    expect(getAt(EXAMPLE, 'cuts.constructor')).toBeUndefined();
    expect(pathOf(['cuts', 0, 'depth'])).toBe('cuts[0].depth');

    let history = beginHistory<Data>(1);
    history = advance(advance(history, 2, 'drag'), 3, 'drag');
    history = advance(settle(history), 4, 'drag');
    expect(undo(history)?.present).toBe(3);
    expect(undo(undo(history)!)?.present).toBe(1);
    expect(redo(undo(history)!)?.present).toBe(4);
    expect(undo(beginHistory(1))).toBeNull();
  });

  it('is written with its comments where cuts change places, come and go', () => {
    const source = `fielded: 1 # the format
panel: { thickness: 20 }
frame:
  thickness: 22
  groove: { width: 6.4, depth: 11, setback: 7.5 } # as the cutter leaves it
  swellGap: 2
cuts:
  # shows
  - { name: raise, side: front, profile: { shape: rebate, reach: 38, depth: 9 } }
  # does not
  - { name: relief, side: back, profile: { shape: rebate, reach: 14, depth: 4.8 }, run: over }
`;
    const data: Data = {
      fielded: 1,
      panel: { thickness: '3/4 in' },
      frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 },
      cuts: [
        { name: 'relief', side: 'back', profile: { shape: 'rebate', reach: 14, depth: 4.8 }, run: 'over' },
        { name: 'raise', side: 'front', profile: { shape: 'rebate', reach: 40, depth: 9 } },
        { name: 'third', side: 'back', profile: { shape: 'cove', reach: 9, depth: 2 } },
      ],
    };
    const text = writeJob({ data, source, fileName: 'job.yaml', shop: null });
    expect(text).toContain('# the format');
    expect(text).toContain('# as the cutter leaves it');
    expect(text).toContain('panel: { thickness: 3/4 in }');
    expect(text).toMatch(/# does not\n {2}- \{ name: relief/);
    expect(text).toMatch(/# shows\n {2}- \{ name: raise, .*reach: 40/);
    const { job, faults } = readJob(text);
    expect(faults).toEqual([]);
    expect(job?.cuts.map(({ name }) => name)).toEqual(['relief', 'raise', 'third']);
  });
});
