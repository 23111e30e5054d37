// No joint inside its limits is worse than the worst that is reported, and the worst is one that can be.

import { answerSpread, type Job, type Profile, prepareJob } from '@fielded/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createJoint, createReader, type Joint } from '../../packages/core/src/spread/joint.ts';
import { listSources, type Source, type SpreadFigure } from '../../packages/core/src/spread/sources.ts';
import { findWorst, worstCase } from '../../packages/core/src/spread/worst-case.ts';
import { line } from '../../packages/geometry/src/curve/curve.ts';
import { processorTime } from '../support/timing.ts';
import { anyCut } from './any-cut.ts';
import { coatedJob, cut, plainJob, profile, wedgeJob } from './joints-to-spread.ts';
import { seekFurther } from './seek-further.ts';

const FIGURES: readonly SpreadFigure[] = ['clearance', 'frontMost', 'frontLeast', 'bottomGap'];
/** Joints that the search tries for each worst case, and how many worst cases: more of both where the environment says so. */
const TRIES = Number(process.env.WORST_TRIES ?? 200);
const RUNS = Number(process.env.WORST_RUNS ?? 30);
const SEED = Number(process.env.WORST_SEED ?? 0);

const none = { thickness: 0, height: 0, fence: 0, grooveWidth: 0, film: 0 };

/** How far a search of `tries` joints, general and blind, gets past the worst that is reported, mm. */
function beatenBy(joint: Joint, sources: readonly Source[], figure: SpreadFigure, way: -1 | 1, tries: number): number {
  const worst = way * worstCase(joint, sources, figure, way);
  const read = createReader(joint, figure);
  return seekFurther((moves) => way * read(moves), sources, joint.moveCount, tries) - worst;
}

const anyLimit = (most: number) => fc.oneof(fc.constant(0), fc.double({ min: 0.01, max: most, noNaN: true }));
const anyLimits = fc.record({
  thickness: anyLimit(0.4),
  height: anyLimit(1),
  fence: anyLimit(2),
  grooveWidth: anyLimit(0.2),
  film: anyLimit(0.1),
  moisture: anyLimit(4),
  setback: anyLimit(0.3),
  grooveDepth: anyLimit(1),
  panelSize: anyLimit(3),
  square: anyLimit(0.02),
});
const anySwelling = fc.record({
  thickness: fc.constantFrom(0, 0.002),
  width: fc.constantFrom(0, 0.003),
  insertion: fc.constantFrom(0, 0.4, 0.9),
  groove: fc.constantFrom(0, 0.002),
  edge: fc.constantFrom(0.5, 1),
});

describe('the worst case', () => {
  it('is beaten by no joint that a search finds, whatever wanders, leans or is run over', () => {
    fc.assert(
      fc.property(
        fc.array(anyCut, { minLength: 1, maxLength: 3 }),
        anyLimits,
        anySwelling,
        fc.constantFrom(...FIGURES),
        fc.constantFrom(-1, 1 as const),
        (made, limits, swelling, figure, way) => {
          const cuts = made.map(({ shape, side, run, tilt }, k) =>
            cut(`cut ${k}`, side, shape, { run: tilt > 1 ? 'under' : run, tilt }),
          );
          const job = plainJob({ cuts, panel: { thickness: 16, measured: 16, film: 0.03, sawn: 'flat' } });
          const joint = createJoint(job, undefined, swelling);
          expect(beatenBy(joint, listSources(cuts, limits), figure, way, TRIES)).toBeLessThan(1e-6);
        },
      ),
      { numRuns: RUNS, endOnFailure: true, ...(SEED && { seed: SEED }) },
    );
  });

  it('would be caught a micrometre short', () => {
    const joint = createJoint(wedgeJob());
    const sources = listSources(joint.cuts, { ...none, fence: 0.5, height: 0.3 });
    const short = (moves: Float64Array) => createReader(joint, 'clearance')(moves) - 1e-6;
    const worst = worstCase(joint, sources, 'clearance', 1);
    expect(seekFurther(short, sources, joint.moveCount, 300) - (worst - 2e-6)).toBeGreaterThan(0.9e-6);
  });

  it('is found between two pins, where ends and middles of the sources miss it', () => {
    // On edge, two pins 2 mm high with 9.3 mm between them: only a head lowered by 2.05 to 2.35 keeps both out of the 9 mm of tongue.
    const points = [
      [0, 9],
      [1.95, 9],
      [1.95, 7],
      [2.05, 7],
      [2.05, 9],
      [11.35, 9],
      [11.35, 7],
      [11.45, 7],
      [11.45, 9],
      [30, 9],
      [30, 0],
    ] as const;
    const chain = points.slice(1).map(([x1, y1], i) => line(points[i]![0], points[i]![1], x1, y1));
    const pins = cut('pins', 'front', { shape: 'outline', reach: 30, depth: 9, chain }, { tilt: Math.PI / 2 });
    const joint = createJoint(coatedJob({ cuts: [pins] }));
    const most = (height: number) => worstCase(joint, listSources(joint.cuts, { ...none, height }), 'clearance', 1);
    const nominal = createReader(joint, 'clearance')(new Float64Array(joint.moveCount));
    expect(most(3)).toBeCloseTo(nominal + 2, 7);
    expect(most(2)).toBeCloseTo(nominal, 7);
  });
});

describe('what of a spread is less than usual', () => {
  const wanderer = (seed: number): Profile => {
    const points = Array.from({ length: 13 }, (_, i) => [2.5 * i, 3 + ((7 * i * seed) % 5)] as const);
    const chain = [...points.slice(1).map(([x1, y1], i) => line(points[i]![0], points[i]![1], x1, y1))];
    const [x, y] = points.at(-1)!;
    return { shape: 'outline', reach: x, depth: 7, chain: [...chain, line(x, y, x, 0)] };
  };
  const limits = { ...none, thickness: 0.2, height: 0.2, fence: 0.3, square: 0.004, moisture: 2 };

  it('is said: twelve cuts that wander across each other get fewer joints, within a second of the processor', () => {
    const cuts = Array.from({ length: 12 }, (_, k) =>
      cut(`cut ${k}`, k % 2 ? 'back' : 'front', wanderer(k + 1), { tilt: Math.PI / 2 }),
    );
    const job = plainJob({ cuts, panel: { thickness: 24, measured: 24, sawn: 'flat' }, spread: limits });
    const prepared = prepareJob(job);
    let answer = answerSpread(prepared, { count: 1, seed: 1, distribution: 'uniform' });
    const took = processorTime(() => {
      answer = answerSpread(prepared);
    });
    expect(took).toBeLessThan(1000);
    const { report, problems } = answer;
    const { count } = report!.clearance.simulated;
    expect(count).toBeLessThan(100_000);
    expect(problems.find(({ code }) => code === 'fewer-joints')!.figures).toEqual({ count, usual: 100_000 });
    // Whoever asks for a number gets it, and is told nothing.
    const asked = answerSpread(prepared, { count: 50, seed: 1, distribution: 'normal' });
    expect(asked.report!.clearance.simulated.count).toBe(50);
    expect(asked.problems.map(({ code }) => code)).not.toContain('fewer-joints');
  });

  it('is said of a lip, whose worst is searched for; all else is proved, or a bound', () => {
    const lip = [line(0, 5, 10, 5), line(10, 5, 6, 2), line(6, 2, 6, 0)];
    const overhung = cut('lip', 'front', { shape: 'outline', reach: 10, depth: 5, chain: lip }, { tilt: 0.6 });
    const answer = (job: Job) =>
      answerSpread(prepareJob({ ...job, spread: limits }), { count: 1, seed: 1, distribution: 'uniform' });
    const frame = { thickness: 30, groove: { width: 20, depth: 11, setback: 5 }, swellGap: 2 };
    const searched = answer(plainJob({ cuts: [overhung], frame }));
    expect(searched.report!.clearance.worstBy).toEqual(['search', 'search']);
    expect(searched.problems.map(({ code }) => code)).toContain('worst-searched');
    const proved = answer(plainJob());
    expect(proved.report!.clearance.worstBy).toEqual(['proof', 'proof']);
    expect(proved.problems.map(({ code }) => code)).not.toContain('worst-searched');
  });

  it('is no more than it can be: a raise on its own that leans, its fence off, is worst at the ends of both', () => {
    const joint = createJoint(plainJob({ cuts: [cut('raise', 'front', profile('ogee', 38, 9, 11, 1.5))] }));
    const sources = listSources(joint.cuts, { ...none, fence: 0.5, square: 0.01 });
    expect(findWorst(joint, sources, 'frontMost', 1).by).toBe('proof');
  });
});

describe('a tongue whose fence and table are out of square', () => {
  const rebates = coatedJob({
    cuts: [cut('front', 'front', profile('rebate', 30, 9)), cut('back', 'back', profile('rebate', 20, 4.8))],
  });
  const half = Math.PI / 360;

  it('becomes a wedge: thicker at the mouth by insertion · tan δ for each cut', () => {
    const joint = createJoint(rebates);
    const sources = listSources(joint.cuts, { ...none, square: half });
    expect(worstCase(joint, sources, 'clearance', -1)).toBeCloseTo(0.2 - 2 * 9 * Math.tan(half), 9);
    // The other way round the tip counts, which stays as it is.
    expect(worstCase(joint, sources, 'clearance', 1)).toBeCloseTo(0.2, 9);
    expect(worstCase(joint, sources, 'frontMost', -1)).toBeCloseTo(1.5 - 9 * Math.tan(half), 9);
  });

  it('wedges at the insertion that a panel too large reaches', () => {
    const joint = createJoint(rebates);
    const sources = listSources(joint.cuts, { ...none, square: half, panelSize: 1, grooveDepth: 0.4 });
    expect(worstCase(joint, sources, 'clearance', -1)).toBeCloseTo(0.2 - 2 * 9.5 * Math.tan(half), 9);
    // The groove stops it at 11.4 however large the panel is.
    const huge = listSources(joint.cuts, { ...none, square: half, panelSize: 9, grooveDepth: 0.4 });
    expect(worstCase(joint, huge, 'clearance', -1)).toBeCloseTo(0.2 - 2 * 11.4 * Math.tan(half), 9);
  });
});

describe('the panel and the groove it goes into', () => {
  it('half of what the panel is too large goes in at each edge, all of it where the other edge is held', () => {
    const gap = (edge: number) => {
      const joint = createJoint(plainJob(), undefined, { thickness: 0, width: 0, insertion: 0, groove: 0, edge });
      const sources = listSources(joint.cuts, { ...none, panelSize: 3, grooveDepth: 0.25 });
      return [worstCase(joint, sources, 'bottomGap', -1), worstCase(joint, sources, 'bottomGap', 1)];
    };
    expect(gap(0.5)).toEqual([2 - 1.5 - 0.25, 2 + 1.5 + 0.25]);
    expect(gap(1)).toEqual([2 - 3 - 0.25, 2 + 3 + 0.25]);
  });

  it('a groove set further back leaves the face that much less proud, and the clearance as it is', () => {
    const joint = createJoint(plainJob());
    const sources = listSources(joint.cuts, { ...none, setback: 0.2 });
    expect(worstCase(joint, sources, 'frontMost', -1)).toBeCloseTo(1.3, 12);
    expect(worstCase(joint, sources, 'frontLeast', 1)).toBeCloseTo(1.5, 12);
    expect(worstCase(joint, sources, 'clearance', -1)).toBeCloseTo(0.2, 12);
  });
});
