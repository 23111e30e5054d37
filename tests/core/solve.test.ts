import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Job } from '../../packages/core/src/job/job.ts';
import { searchSetting } from '../../packages/core/src/solve/search.ts';
import { findSetting } from '../../packages/core/src/solve/settings.ts';
import { solve } from '../../packages/core/src/solve/solve.ts';
import { TARGETS } from '../../packages/core/src/solve/targets.ts';
import { completeDoor } from '../support/doors.ts';
import { cut, plainJob, profile, wedgeJob } from './joints-to-spread.ts';

const year = { made: 8, driest: 6, dampest: 11, pinned: true } as const;
const read = (job: Job, name: string) => TARGETS.find((target) => target.name === name)!.read(job);

/** Sets a job to a known setting, reads the figure, sets it off again, and asks for the figure. */
function recover(job: Job, figure: string, by: string, planted: number, away: number) {
  const at = findSetting(job, by)!;
  const value = read(at.set(planted), figure);
  expect(value, `${figure} exists at ${by} ${planted}`).not.toBeNull();
  return solve(at.set(planted + away), { for: figure, value: value!, by });
}

describe('planted answers are found again to 1e-9', () => {
  const wedge = wedgeJob({ season: year });
  const round = plainJob({
    cuts: [cut('cove', 'front', profile('cove', 24, 12, 2, 1)), ...plainJob().cuts.slice(1)],
    season: year,
  });
  it.each([
    ['clearance', 'back relief.depth', plainJob(), 4.8, -0.7],
    ['clearance', 'back relief.depth', plainJob(), 4.6, 0.9],
    ['clearance', 'cuts[1].depth', plainJob(), 4.6, 0.9],
    ['clearance', 'bevel.reach', wedge, 31.3, -2],
    ['clearance', 'bevel.depth', wedge, 13.7, 0.4],
    ['clearance', 'frame.swellGap', wedge, 1.4, 1.1],
    ['clearance', 'panel.thickness', wedge, 19.6, 0.9],
    [
      'clearance',
      'panel.measured',
      plainJob({ cuts: [cut('raise', 'front', profile('rebate', 30, 13.7))] }),
      20.1,
      0.6,
    ],
    ['clearance', 'frame.groove.width', wedge, 10.2, -0.6],
    ['clearance', 'cove.reach', round, 25.1, 1.3],
    ['deepestInsertion', 'bevel.depth', wedge, 13.1, 0.5],
    ['visibleMargin', 'bevel.reach', wedge, 33.3, -6],
    ['frontFace', 'bevel.depth', wedge, 13.9, -1.2],
    ['frontFace.least', 'panel.thickness', wedge, 20.4, 0.3],
    ['backFace', 'frame.groove.setback', wedge, 8.3, -0.9],
    ['bottomGap', 'frame.swellGap', wedge, 2.7, -1],
    ['thicknessAtMouth', 'cove.depth', round, 11.7, 0.8],
    ['season.dampest.bottomGap', 'frame.swellGap', wedge, 2.2, 0.7],
    ['season.dampest.clearance', 'bevel.depth', wedge, 14.2, -0.9],
    ['season.driest.insertion', 'frame.groove.depth', wedge, 12.5, -1.5],
  ] as const)('%s by %s', (figure, by, job, planted, away) => {
    const { setting, residual, change } = recover(job, figure, by, planted, away);
    expect(Math.abs(setting! - planted)).toBeLessThan(1e-9);
    expect(Math.abs(residual!)).toBeLessThan(1e-11);
    expect(change).toBeCloseTo(-away, 9);
  });

  it('for any wedge and any size of it', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('bevel.depth', 'bevel.reach', 'panel.thickness', 'frame.groove.width'),
        fc.double({ min: -1.5, max: 1.5, noNaN: true }),
        fc.double({ min: -1.5, max: 1.5, noNaN: true }),
        (by, planted, away) => {
          const job = wedgeJob();
          const now = findSetting(job, by)!.now;
          const { setting } = recover(job, 'clearance', by, now + planted, away);
          expect(Math.abs(setting! - now - planted)).toBeLessThan(1e-9);
        },
      ),
      { numRuns: 60, endOnFailure: true },
    );
  });

  it('a clearance of exactly nothing too', () => {
    const { setting } = solve(plainJob(), { for: 'clearance', value: 0, by: 'back relief.depth' });
    expect(setting).toBeCloseTo(4.6, 12);
  });
});

describe('an answer', () => {
  const job = plainJob({ cuts: [plainJob().cuts[0]!, { ...plainJob().cuts[1]!, depth: 4.6 }] });
  const solved = solve(job, { for: 'clearance', value: 0.2, by: 'back relief.depth' });

  it('has the names of the report', () => {
    expect(solved).toMatchObject({ for: 'clearance', value: 0.2, by: 'back relief.depth', reason: null });
    expect(solved.setting).toBeCloseTo(4.8, 12);
    expect(solved.change).toBeCloseTo(0.2, 12);
    expect(Math.abs(solved.residual!)).toBeLessThan(1e-12);
  });

  it('is told to the nearest 1/64 in, with the clearance there', () => {
    // 4.8 mm is 12.09 sixty-fourths; 12/64 in is 4.7625 mm.
    expect(solved.nearest64!.setting).toBeCloseTo(4.7625, 12);
    expect(solved.nearest64!.inches).toBe('3/16 in');
    expect(solved.nearest64!.value).toBeCloseTo(0.1625, 9);
  });

  it('says what else changes, and which problems go', () => {
    const named = Object.fromEntries(solved.changes.map(({ name, before, after }) => [name, [before, after]]));
    expect(named.verdict).toEqual(['tight', 'sliding']);
    expect(named.thicknessAtTip![0]).toBeCloseTo(6.4, 12);
    expect(named.thicknessAtTip![1]).toBeCloseTo(6.2, 12);
    expect(named).not.toHaveProperty('visibleMargin');
    expect(solved.problems.gone.map(({ code }) => code)).toEqual(['tight']);
    expect(solved.problems.come).toEqual([]);
  });

  it('tells problems of one kind at several places apart', () => {
    // Panels of 74 and 58 mm between stiles: with a reach of 34 the raises meet no longer on the first.
    const doors = [176, 160].map((width, k) => completeDoor({ name: `${k}`, width, height: 700, stile: 60, rail: 60 }));
    const { problems } = solve(plainJob({ doors }), { for: 'visibleMargin', value: 25, by: 'raise.reach' });
    const places = (list: typeof problems.gone) => list.map(({ code, at }) => `${code} ${at}`);
    expect(places(problems.gone)).toContain('raises-meet doors[0]');
    expect(places([...problems.gone, ...problems.come])).not.toContain('raises-meet doors[1]');
    expect(places(problems.come)).toEqual([]);
  });

  it('says what to write where', () => {
    expect(solved.writes).toEqual([{ path: ['cuts', 1, 'depth'], mm: solved.setting }]);
  });

  it('leaves alone what already is as wanted', () => {
    const wedge = wedgeJob();
    const already = solve(wedge, { for: 'clearance', value: read(wedge, 'clearance')!, by: 'bevel.depth' });
    expect(already).toMatchObject({ setting: 14, change: 0, residual: 0, move: null, changes: [], writes: [] });
  });
});

it('finds the stock that is flush at the back, the panel face down for both cuts', () => {
  const solved = solve(plainJob(), { for: 'backFace', value: 0, by: 'panel.measured' });
  // The back lip is 22 − 7.5 − 6.4 = 8.1 thick, and the relief 4.8 deep in 20 mm stock: 3.3 more is wanted.
  expect(solved.setting).toBeCloseTo(23.3, 9);
  expect(solved.changes.map(({ name }) => name)).not.toContain('frontFace.most');
});

describe('which way to move, for that run', () => {
  const move = (other: Parameters<typeof cut>[3], key: 'depth' | 'reach', value: number) => {
    const job = wedgeJob({ cuts: [cut('bevel', 'front', profile('bevel', 30, 14, 0, 2), other)] });
    return solve(job, { for: 'clearance', value, by: `bevel.${key}` }).move;
  };
  // Cutter below the stock, set from the table: higher is deeper. Above the stock it is lower. Common practice.
  it.each([
    [{ run: 'under' }, 'depth', 0.6, 'raise the spindle by 0.2 mm'],
    [{ run: 'under' }, 'depth', 0.2, 'lower the spindle by 0.2 mm'],
    [{ run: 'over' }, 'depth', 0.6, 'lower the spindle by 0.2 mm'],
    [{ run: 'over' }, 'depth', 0.2, 'raise the spindle by 0.2 mm'],
    [{ run: 'under' }, 'reach', 0.6, 'set the fence back by 0.5 mm'],
    [{ run: 'under' }, 'reach', 0.2, 'bring the fence forward by 0.5 mm'],
    [{ tilt: Math.PI / 2 }, 'depth', 0.6, 'set the fence back by 0.2 mm'],
    [{ tilt: Math.PI / 2 }, 'reach', 0.6, 'raise the spindle by 0.5 mm'],
  ] as const)('%j %s', (other, key, value, words) => {
    expect(move(other, key, value)).toBe(words);
  });

  it('nothing to move is no move', () => {
    const solved = solve(wedgeJob(), { for: 'clearance', value: 0.4, by: 'bevel.depth' });
    expect(solved.move).toBeNull();
  });
});

describe('no answer is an answer', () => {
  it('out of reach: why, and the nearest', () => {
    const solved = solve(plainJob(), { for: 'deepestInsertion', value: 14, by: 'back relief.depth' });
    expect(solved.setting).toBeNull();
    expect(solved.nearest!.value).toBe(11);
    expect(solved.reason).toBe(
      `Nowhere from 0 mm to 20 mm does back relief.depth bring the deepest insertion to 14 mm: the nearest is 11 mm, at ${Number(
        solved.nearest!.setting.toFixed(2),
      )} mm.`,
    );
    expect(solved.writes).toEqual([]);
  });

  it('a figure that does not depend on it', () => {
    const flat = plainJob({ cuts: [cut('raise', 'front', profile('rebate', 30, 13.7))] });
    const solved = solve(flat, { for: 'frontFace', value: 0, by: 'panel.thickness' });
    expect(solved.reason).toBe(
      'The step of the front face (panel pressed forward) does not depend on panel.thickness: it is 6.2 mm at every setting.',
    );
    expect(solved.nearest!.setting).toBe(20);
  });

  it('a season the job does not give', () => {
    const solved = solve(plainJob(), { for: 'season.driest.insertion', value: 8, by: 'frame.swellGap' });
    expect(solved.reason).toBe(
      'There is no insertion at the driest to set: the job gives no seasons, or not the wood and width they need.',
    );
    expect(solved.nearest).toBeNull();
  });

  it('a jump: the tongue either stops at the step or goes past it', () => {
    // Two flats, 5 mm in: with the step too thick it stops at 5, otherwise it goes the whole 11; 8 there is not.
    const steps = [cut('edge', 'front', profile('rebate', 5, 14)), cut('rest', 'front', profile('rebate', 30, 13.5))];
    const solved = solve(plainJob({ cuts: steps }), { for: 'deepestInsertion', value: 8, by: 'rest.depth' });
    expect(solved.setting).toBeNull();
    expect([5, 11]).toContain(solved.nearest!.value);
  });
});

describe('the search', () => {
  const NEAR_PI = Math.PI - 1e-7;

  it('finds the nearer of two answers', () => {
    const parabola = (x: number) => x * x;
    expect(searchSetting(parabola, 4, 1, -10, 10).found!.setting).toBeCloseTo(2, 12);
    expect(searchSetting(parabola, 4, -1, -10, 10).found!.setting).toBeCloseTo(-2, 12);
  });

  it('closes in on the lowest where it stays above', () => {
    const { found, nearest } = searchSetting((x) => (x - 3.21) ** 2 + 1, 0, 0, -10, 10);
    expect(found).toBeNull();
    expect(nearest!.setting).toBeCloseTo(3.21, 5);
  });

  it('looks right up to where the figure ceases to be', () => {
    const { found } = searchSetting((x) => (x > Math.PI ? null : x), NEAR_PI, 0, -10, 10);
    expect(found!.setting).toBeCloseTo(NEAR_PI, 12);
    expect(searchSetting((x) => (x > Math.PI ? null : x), 4, 0, -10, 10).nearest!.setting).toBeCloseTo(Math.PI, 12);
  });

  it('takes the near end of a level stretch', () => {
    const { found } = searchSetting((x) => Math.min(x, 5), 5, 0, -10, 20);
    expect(found!.setting).toBeCloseTo(5, 11);
  });
});

describe('bad input is named', () => {
  it.each([
    [
      { for: 'clearence', value: 0.2, by: 'raise.depth' },
      'clearence is not a figure of this job: did you mean clearance?',
    ],
    [
      { for: 'clearance', value: 0.2, by: 'rase.depth' },
      'rase.depth is not a size to set of this job: did you mean raise.depth?',
    ],
    [{ for: 'clearance', value: Number.NaN, by: 'raise.depth' }, 'the clearance wanted must be a number, got NaN'],
  ])('%j', (wanted, message) => {
    expect(() => solve(plainJob(), wanted)).toThrow(expect.objectContaining({ name: 'RangeError', message }));
  });
});
