import { evaluate, type Job, readJob, solve, solveByTwo } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { meetBoth } from '../../packages/core/src/solve/meet-both.ts';
import { Pair } from '../../packages/core/src/solve/pair.ts';
import { findSetting, type Setting } from '../../packages/core/src/solve/settings.ts';
import { TARGETS } from '../../packages/core/src/solve/targets.ts';
import { jobData } from '../support/job-data.ts';
import { Random } from '../support/random.ts';
import { plainJob, wedgeJob } from './joints-to-spread.ts';

const read = (job: Job, name: string) => TARGETS.find((target) => target.name === name)!.read(job);

function setBoth(job: Job, [a, b]: readonly [string, string], x: number, y: number): Job {
  const first = findSetting(job, a)!.set(x);
  return findSetting(first, b)!.set(y);
}

describe('two settings at once', () => {
  it('bring the face flush and keep the clearance aimed at', () => {
    const job = plainJob();
    const by = ['raise.depth', 'back relief.depth'] as const;
    const { settings, writes, residual } = solveByTwo(job, { for: 'face', value: 0, by });
    const [raise, relief] = settings!;
    const after = evaluate(setBoth(job, by, raise.round, relief.round));
    const { least, most } = after.fit.frontFace!;
    expect((least + most) / 2).toBeCloseTo(0, 2);
    expect(after.fit.clearance).toBeCloseTo(job.fit.target, 2);
    expect(after.fit.verdict).toBe('sliding');
    expect(Math.abs(residual!)).toBeLessThan(1e-9);
    expect(writes.map(({ path }) => path.join('.'))).toEqual(['cuts.0.depth', 'cuts.1.depth']);
  });

  // What moves least of all is one of them alone wherever the figure follows both in a straight line: the steeper.
  it('move the one that takes least, where one alone will do', () => {
    const job = wedgeJob();
    const value = read(job, 'clearance')! + 0.4;
    const by = ['bevel.depth', 'bevel.reach'] as const;
    const found = solveByTwo(job, { for: 'clearance', value, by });
    const alone = by.map((name) => Math.abs(solve(job, { for: 'clearance', value, by: name }).change!));
    expect(found.total!).toBeLessThanOrEqual(Math.min(...alone) + 1e-6);
    expect(found.settings!.map(({ change }) => Math.abs(change) > 1e-6)).toEqual([true, false]);
  });

  it('are no worse than any pair on a grid around them', () => {
    const random = new Random(8);
    for (let round = 0; round < 3; round++) {
      const job = wedgeJob();
      const by = random.oneOf([
        ['bevel.depth', 'frame.groove.width'],
        ['bevel.reach', 'panel.thickness'],
        ['bevel.reach', 'frame.swellGap'],
      ] as const);
      const value = read(job, 'clearance')! + random.between(-0.8, 0.8);
      const { total } = solveByTwo(job, { for: 'clearance', value, by });
      const [a, b] = [findSetting(job, by[0])!, findSetting(job, by[1])!];
      // An exhaustive grid of pairs that move less in all: none of them gives the figure.
      const steps = 24;
      const miss: number[] = [];
      for (let i = -steps; i <= steps; i++) {
        const x = a.now + (i / steps) * total! * 0.98;
        const room = total! * 0.98 - Math.abs(x - a.now);
        for (let k = -steps; k <= steps; k++) {
          const y = b.now + (k / steps) * room;
          const got = x < a.least || y < b.least ? null : read(setBoth(job, by, x, y), 'clearance');
          if (got !== null) miss.push(Math.abs(got - value));
        }
      }
      expect(Math.min(...miss), `${by} to ${value}`).toBeGreaterThan(1e-4);
    }
  });

  // √x + √y = c: half way between the axes a quarter of c² for each is the least in all, half of what one alone takes.
  it('share a figure where two small moves do what one large one does, whichever way they go', () => {
    const random = new Random(9);
    for (let round = 0; round < 8; round++) {
      const way = round % 2 === 0 ? 1 : -1;
      const wanted = way * Math.sqrt(random.between(1, 3));
      let first = 0;
      const setting = (name: string, set: (mm: number) => void): Setting => {
        const move = { sentence: '', figures: {} } as unknown as Setting['grow'];
        const put = (mm: number) => {
          set(mm);
          return plainJob();
        };
        return { name, now: 10, least: 0, most: 20, set: put, writes: () => [], grow: move, shrink: move };
      };
      let second = 0;
      const a = setting('one', (mm) => {
        [first, second] = [mm - 10, 0];
      });
      const b = setting('other', (mm) => {
        second = mm - 10;
      });
      const root = (moved: number) => Math.sign(moved) * Math.sqrt(Math.abs(moved));
      const figure = { ...TARGETS[0]!, read: () => root(first) + root(second) };
      const [x, y] = new Pair(plainJob(), a, b).moveLeast(figure, wanted)!;
      for (const moved of [x - 10, y - 10]) expect(moved).toBeCloseTo((way * wanted ** 2) / 4, 3);
    }
  });

  it('say that none will do, and change nothing', () => {
    const found = solveByTwo(plainJob(), { for: 'visibleMargin', value: 500, by: ['raise.reach', 'frame.swellGap'] });
    expect(found).toMatchObject({ settings: null, total: null, writes: [] });
    expect(found.reason).toContain('Within 25 mm of where they are, raise.reach and frame.swellGap do not');
  });

  it('tell how near the face comes where it cannot be as wanted, the fit kept', () => {
    const job = plainJob();
    const by = ['raise.depth', 'back relief.depth'] as const;
    const { settings, nearest, reason, writes } = solveByTwo(job, { for: 'face', value: 12, by });
    expect({ settings, writes }).toEqual({ settings: null, writes: [] });
    // The back is left as good as uncut: the stock less the tongue wanted is all that the raise can take.
    const { thickness } = job.panel;
    const wanted = job.frame.groove.width - job.fit.target;
    const { groove } = job.frame;
    expect(nearest!.settings[1]).toBeCloseTo(0.001, 6);
    expect(nearest!.value).toBeCloseTo(thickness - wanted - 0.001 - groove.setback - job.fit.target / 2, 6);
    expect(reason).toContain('the nearest that still fits is');
  });

  it('are found in few readings, though the first cannot be read where one starts', () => {
    let readings = 0;
    const count = <T>(value: T): T => {
      readings++;
      return value;
    };
    const room = { now: 9, least: 0, most: 20 };
    const figures = {
      // As a face and a clearance are, of a tongue that does not enter: the face is none until it does.
      first: (x: number, y: number) => count(14.1 - x - y < 0 ? null : x - 7.5 - (x + y - 14) / 2),
      second: (x: number, y: number) => count(x + y - 13.8),
    };
    const { found } = meetBoth(figures, 0.5, 0.2, room, { ...room, now: 4.6 });
    expect(found![0] + found![1]).toBeCloseTo(14, 9);
    expect(found![0]).toBeCloseTo(8, 9);
    expect(readings).toBeLessThan(60);
  });

  it.each([
    [['raise.depth', 'raise.depth'], 'raise.depth and raise.depth are one size: name two'],
    [['raise.dept', 'raise.reach'], 'raise.dept is not a size to set of this job: did you mean raise.depth?'],
  ] as const)('%j is refused', (by, message) => {
    expect(() => solveByTwo(plainJob(), { for: 'clearance', value: 0.2, by })).toThrow(
      expect.objectContaining({ name: 'RangeError', message }),
    );
  });
});

describe('round answers', () => {
  it('are to 0.01 mm in a job of millimetres, the exact one beside', () => {
    const { setting, round, writes } = solve(plainJob(), { for: 'clearance', value: 0.3333, by: 'back relief.depth' });
    expect(setting).toBeCloseTo(4.9333, 9);
    expect(round).toEqual({ setting: 4.93, value: expect.closeTo(0.33, 9) });
    expect(writes).toEqual([{ path: ['cuts', 1, 'depth'], mm: 4.93 }]);
  });

  it('are 64ths in a job of inches where they serve, else thousandths', () => {
    const job = { ...plainJob(), units: 'in' as const };
    // 13/64 in is 5.159375 mm: the clearance is then 5.159375 − 4.6.
    const near = solve(job, { for: 'clearance', value: 0.56, by: 'back relief.depth' });
    expect(near.round!.setting).toBeCloseTo((13 / 64) * 25.4, 12);
    const far = solve(job, { for: 'clearance', value: 0.25, by: 'back relief.depth' });
    // 4.85 mm is 0.19094 in.
    expect(far.round!.setting / 25.4).toBeCloseTo(0.191, 12);
  });

  it('read back: no answer takes a job out of what its file may hold', () => {
    const random = new Random(5);
    let answers = 0;
    for (let i = 0; i < 40; i++) {
      const job = plainJob();
      const by = random.oneOf([
        'raise.depth',
        'back relief.depth',
        'panel.thickness',
        'panel.measured',
        'frame.swellGap',
        'frame.groove.width',
        'frame.groove.depth',
        'frame.groove.setback',
      ]);
      const figure = random.oneOf(['clearance', 'bottomGap', 'frontFace', 'insertion', 'deepestInsertion']);
      const solved = solve(job, { for: figure, value: random.between(-4, 14), by });
      if (solved.setting === null) continue;
      answers++;
      const after = findSetting(job, by)!.set(solved.round!.setting);
      const { units: _, ...data } = jobData(after);
      expect(readJob(JSON.stringify(data)).faults, `${by} ${solved.round!.setting}`).toEqual([]);
    }
    expect(answers).toBeGreaterThan(10);
  });
});

it('says sizes whole: a panel grows at both its edges', () => {
  const { move } = solve(plainJob(), { for: 'bottomGap', value: 1.6, by: 'frame.swellGap' });
  expect(move).toBe('make the panel 0.8 mm larger over all (0.4 mm at each edge)');
});
