// The same trials as `npm run fuzz`, fewer of them: a finding there becomes a named test beside this one.
import { expect, it } from 'vitest';
import { fuzzDoors } from '../fuzz/fuzz-doors.ts';
import { fuzzDrawing } from '../fuzz/fuzz-drawings.ts';
import { fuzzImages } from '../fuzz/fuzz-images.ts';
import { fuzzJob } from '../fuzz/fuzz-jobs.ts';
import { fuzzKnives } from '../fuzz/fuzz-knives.ts';
import { fuzzPlans, readPlanJob } from '../fuzz/fuzz-plans.ts';
import { fuzzQuotes, moneyFaults } from '../fuzz/fuzz-quotes.ts';
import { fuzzSetting, settingFaults, settingJob, settingReport } from '../fuzz/fuzz-settings.ts';
import { fuzzTemplates } from '../fuzz/fuzz-templates.ts';
import { fuzzText, readStarts } from '../fuzz/fuzz-text.ts';
import { pathArea } from '../fuzz/path-area.ts';
import { limitsBroken } from '../fuzz/set-up-limits.ts';
import { planned } from '../support/plans.ts';
import { Random } from '../support/random.ts';
import { LONG_RUN, trials } from '../support/trials.ts';

/**
 * How many odd jobs and spoilt files are tried each day: of 100 small faults of geometry, profile, machining and joint, 18 are noticed
 * within the first 800 jobs, the last of them by the 315th; of 40 of reading, 7 within the first 400 files, the last by the 43rd.
 */
const [JOBS, FILES] = [400, 140];

/** And how many off their nominal sizes: of 100 faults of the same, of knives and of spreads, 9 are noticed within 25, five of them tried again by the third. */
const SETTINGS = 12;

it('odd jobs keep every promise', () => {
  // Each day seven of eight are asked for their joint alone: only the whole report can throw for what else is said of them.
  const isWhole = (seed: number) => LONG_RUN || seed % 8 === 0;
  const findings = Array.from({ length: trials(JOBS, 5000) }, (_, i) => fuzzJob(i + 1, isWhole(i + 1)));
  expect(findings.flat()).toEqual([]);
});

it('spoilt files give a job or faults in words', () => {
  const starts = readStarts();
  expect(Array.from({ length: trials(FILES, 2000) }, (_, i) => fuzzText(i + 1, starts)).flat()).toEqual([]);
});

it('spoilt outlines, as path data, DXF and SVG, are read or refused in words', () => {
  expect(Array.from({ length: trials(300, 1000) }, (_, i) => fuzzDrawing(i + 1)).flat()).toEqual([]);
});

it('jobs off their nominal sizes have the margin, the steel and the worst cases that their shapes ask for', () => {
  expect(Array.from({ length: trials(SETTINGS, 100) }, (_, i) => fuzzSetting(i + 1)).flat()).toEqual([]);
});

it('would notice a margin, a knife and a worst case that are a little off', () => {
  const job = settingJob(7, new Random(7));
  const report = settingReport(job);
  const faultsWith = (other: Partial<typeof report>) => settingFaults(job, { ...report, ...other }, new Random(1));
  expect(faultsWith({})).toEqual([]);
  const [knife] = report.knives!;
  const { clearance, ...spread } = report.spread!;
  const [least, most] = clearance.worst;
  const spreadOf = (worst: [number, number]) =>
    faultsWith({ spread: { ...spread, clearance: { ...clearance, worst } } });
  expect(faultsWith({ fit: { ...report.fit, visibleMargin: report.fit.visibleMargin! + 2e-6 } })).toHaveLength(1);
  expect(faultsWith({ knives: [{ ...knife!, length: knife!.length + 2e-5 }] })).toHaveLength(1);
  expect(faultsWith({ knives: [{ ...knife!, width: knife!.width - 2e-4 }] })).toHaveLength(1);
  expect(spreadOf([least, most - 1e-4])).toHaveLength(1);
});

/**
 * The pictures of each day: none takes long, and between them they are refused as damaged, too small, no picture, without contrast,
 * sample or faces, and cut off, and one with two cuts is traced. So each of eight faults planted in the reading of pictures (a
 * refusal without words in seven places, a job of another version) is found by one of them.
 */
const PICTURES = [4, 6, 24, 25, 26, 28, 29, 30, 33, 57];

it.each([
  ['doors', trials(60, 600), fuzzDoors],
  ['quotes', trials(60, 600), fuzzQuotes],
  ['templates', trials(30, 300), fuzzTemplates],
  ['pictures', trials(PICTURES.length, 60), (seed: number) => fuzzImages(LONG_RUN ? seed : PICTURES[seed - 1]!)],
  ['plans', trials(20, 400), fuzzPlans],
  ['knives turned over', trials(10, 100), fuzzKnives],
] as const)('odd %s keep every promise, %d of them', (_, count, fuzz) => {
  expect(Array.from({ length: count }, (_, i) => fuzz(i + 1)).flat()).toEqual([]);
});

it('would notice money that does not add up', () => {
  const line = {
    item: 'doors',
    what: '',
    figures: {},
    quantity: 3,
    unit: 'h',
    price: 12.5,
    from: '',
    missing: null,
  } as const;
  const price = {
    currency: 'EUR',
    marginRate: 10,
    tax: null,
    deposit: null,
    depositRate: null,
    notPriced: [],
    notCounted: [],
  };
  const right = { ...price, lines: [{ ...line, amount: 38 }], net: 38, margin: 4, total: 42 };
  expect(moneyFaults(right, { margin: 10 })).toEqual([]);
  expect(moneyFaults({ ...right, total: 41 }, { margin: 10 })).toEqual(['total is 41, and comes to 42']);
  expect(moneyFaults({ ...right, lines: [{ ...line, amount: 37 }] }, { margin: 10 })).toHaveLength(1);
});

it('would notice a way that works against a limit, and one that breaks none', () => {
  let [working, not] = [0, 0];
  for (let seed = 1; seed <= 40; seed++) {
    const { job } = readPlanJob(new Random(seed));
    if (job === null) continue;
    for (const way of planned(job).plan.ways) {
      const broken = limitsBroken(job, way);
      if (broken === null) continue;
      if (way.works) working++;
      else not++;
      expect(broken.length === 0, `${seed} ${way.cut}`).toBe(way.works);
    }
  }
  expect(Math.min(working, not)).toBeGreaterThan(10);
});

it('would notice an outline that is open, holds no number, or has another area', () => {
  expect(pathArea('M 0 0 L 2 0 L 2 1 L 0 1 Z')).toEqual({ area: 2, closed: true, finite: true, slack: 0 });
  // A quarter circle is told to a picometre's worth of area, one short of half a turn only to its root.
  expect(pathArea('M 0 0 A 5 5 0 0 1 5 5 Z').slack).toBeLessThan(3e-8);
  expect(pathArea('M 0 0 A 5 5 0 0 1 9.99999 0 Z').slack).toBeLessThan(1e-4);
  expect(pathArea('M 0 0 L 2 0 L 2 1').closed).toBe(false);
  expect(pathArea('M 0 0 L NaN 0 Z').finite).toBe(false);
  expect(pathArea('M -1 0 A 1 1 0 0 1 1 0 Z').area).toBeCloseTo(Math.PI / 2, 12);
});
