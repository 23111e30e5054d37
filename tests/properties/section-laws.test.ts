// Laws that every section obeys, whatever the job.
import { evaluateJoint, type Job, type Profile } from '@fielded/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeEdge } from '../../packages/core/src/joint/edge.ts';
import { randomJob } from '../support/random-job.ts';
import { trials } from '../support/trials.ts';

const anyJob = fc
  .tuple(fc.integer({ min: 1, max: 2 ** 31 }), fc.constantFrom('free', 'exact', 'near'))
  .map(([seed, alignment]) => randomJob(seed, alignment as 'free' | 'exact' | 'near'));
const RUNS = { numRuns: trials(120, 400), seed: 20_261_125 };

describe('laws of the section', () => {
  it('what is taken and what is left make up the stock', () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        const { section } = makeEdge(job.panel, job.cuts);
        const stock = section.width * section.thickness;
        expect(Math.abs(section.wood.area + section.removed.area - stock)).toBeLessThan(1e-9 * stock);
        expect(Math.abs(section.wood.x + section.removed.x - (stock * section.width) / 2)).toBeLessThan(
          1e-9 * stock * section.width,
        );
        expect(Math.abs(section.wood.y + section.removed.y - (stock * section.thickness) / 2)).toBeLessThan(
          1e-9 * stock * section.thickness,
        );
      }),
      RUNS,
    );
  });

  it('the cuts one by one, less what they share, take what the section lost', () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        const { cuts, removedArea } = evaluateJoint(job).section;
        const sum = cuts.reduce((total, cut) => total + cut.removedArea - cut.sharedArea, 0);
        expect(Math.abs(sum - removedArea)).toBeLessThan(1e-9 * Math.max(1, removedArea));
      }),
      RUNS,
    );
  });

  it('the order of the cuts never changes the section', () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        const turned = evaluateJoint({ ...job, cuts: [...job.cuts].reverse() });
        const given = evaluateJoint(job);
        expect(turned.section.removedArea).toBeCloseTo(given.section.removedArea, 9);
        expectSameFigures(turned.tongue, given.tongue, 1e-11);
        expectSameFigures(turned.fit, given.fit, 1e-6);
      }),
      RUNS,
    );
  });

  it('a panel turned front to back, in a frame turned likewise, fits the same', () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        const { groove, thickness } = job.frame;
        const turned: Job = {
          ...job,
          frame: { ...job.frame, groove: { ...groove, setback: thickness - groove.setback - groove.width } },
          cuts: job.cuts.map((cut) => ({ ...cut, side: cut.side === 'front' ? 'back' : 'front' })),
        };
        const given = evaluateJoint(job);
        const mirrored = evaluateJoint(turned);
        expectSameFigures(mirrored.tongue, given.tongue, 1e-10);
        expect(mirrored.fit.verdict).toBe(given.fit.verdict);
        expectClose(mirrored.fit.frontFace?.most, given.fit.backFace?.most, 1e-9);
        expectClose(mirrored.fit.backFace?.least, given.fit.frontFace?.least, 1e-9);
      }),
      RUNS,
    );
  });

  it('a job of twice the size has twice the tongue and four times the area', () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        const given = makeEdge(job.panel, job.cuts).section;
        const twice = makeEdge(scaled(job, 2).panel, scaled(job, 2).cuts).section;
        // The untouched field shown past the reach does not grow, but nothing is taken there.
        expect(Math.abs(twice.removed.area - 4 * given.removed.area)).toBeLessThan(
          1e-9 * Math.max(1, given.removed.area),
        );
        const tongue = evaluateJoint(job).tongue;
        const bigger = evaluateJoint(scaled(job, 2)).tongue;
        expectClose(bigger.grooveNeeded, tongue.grooveNeeded === null ? null : 2 * tongue.grooveNeeded, 1e-9);
      }),
      RUNS,
    );
  });

  it('a deeper cut never thickens the tongue, and never takes less', () => {
    fc.assert(
      fc.property(anyJob, fc.double({ min: 0, max: 2, noNaN: true }), (job, deeper) => {
        const cut = job.cuts[0]!;
        const more = evaluateJoint({ ...job, cuts: [{ ...cut, depth: cut.depth + deeper }, ...job.cuts.slice(1)] });
        const given = evaluateJoint(job);
        expect(more.section.removedArea).toBeGreaterThanOrEqual(given.section.removedArea - 1e-9);
        if (more.tongue.thickest === null || given.tongue.thickest === null) return;
        expect(more.tongue.thickest).toBeLessThanOrEqual(given.tongue.thickest + 1e-11);
        expect(more.tongue.thinnest!).toBeLessThanOrEqual(given.tongue.thinnest! + 1e-11);
        expect(more.tongue.grooveNeeded!).toBeLessThanOrEqual(given.tongue.grooveNeeded! + 1e-11);
      }),
      RUNS,
    );
  });

  it('the insertion reached is the deepest at which the tongue fits', () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        const { fit } = evaluateJoint(job);
        const reached = fit.deepestInsertion;
        if (reached === null || fit.verdict === 'will-not-enter') return;
        const clearanceAt = (e: number) =>
          evaluateJoint({ ...job, frame: { ...job.frame, swellGap: job.frame.groove.depth - e } }).fit.clearance!;
        if (reached > 0.01) expect(clearanceAt(reached - 1e-7)).toBeGreaterThanOrEqual(0);
        if (reached < job.frame.groove.depth - 1e-6) expect(clearanceAt(reached + 1e-6)).toBeLessThan(0);
      }),
      RUNS,
    );
  });
});

function scaled(job: Job, k: number): Job {
  const { groove } = job.frame;
  return {
    ...job,
    panel: { ...job.panel, thickness: k * job.panel.thickness, measured: k * job.panel.measured },
    frame: {
      ...job.frame,
      thickness: k * job.frame.thickness,
      groove: { width: k * groove.width, depth: k * groove.depth, setback: k * groove.setback },
      swellGap: k * job.frame.swellGap,
    },
    cuts: job.cuts.map((cut) => ({
      ...cut,
      depth: k * cut.depth,
      reach: k * cut.reach,
      profile: scaledProfile(cut.profile, k),
    })),
  };
}

function scaledProfile(profile: Profile, k: number): Profile {
  if (profile.shape === 'outline') throw new RangeError('the random jobs have named shapes only');
  const { reach, depth, land, shoulder } = profile;
  return { ...profile, reach: k * reach, depth: k * depth, land: k * land, shoulder: k * shoulder };
}

function expectSameFigures(actual: object, expected: object, tolerance: number): void {
  const names = Object.keys(expected);
  expect(names.length).toBeGreaterThan(0);
  for (const name of names) {
    const [p, q] = [actual[name as never], expected[name as never]] as unknown[];
    if (typeof q === 'number' || q === null) expectClose(p as number | null, q as number | null, tolerance);
  }
}

function expectClose(p: number | null | undefined, q: number | null | undefined, tolerance: number): void {
  if (typeof p !== 'number' || typeof q !== 'number') expect(p).toBe(q);
  else expect(Math.abs(p - q)).toBeLessThanOrEqual(tolerance * Math.max(1, Math.abs(q)));
}
