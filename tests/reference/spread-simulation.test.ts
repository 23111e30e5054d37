import { errorFunction, mean, sampleKurtosis, sampleSkewness, sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { createJoint } from '../../packages/core/src/spread/joint.ts';
import { fillNormalPairs } from '../../packages/core/src/spread/normal-pairs.ts';
import { createRandom } from '../../packages/core/src/spread/random.ts';
import { simulateInChunks, simulateSpread } from '../../packages/core/src/spread/simulate.ts';
import type { SimulationOptions } from '../../packages/core/src/spread/simulation.ts';
import { listSources } from '../../packages/core/src/spread/sources.ts';
import { xoshiro128 } from '../../packages/core/src/spread/xoshiro.ts';
import { coatedJob, cut, profile } from '../core/joints-to-spread.ts';

// Reference: the normal distribution as simple-statistics computes it, and the standard errors of mean (σ/√n), deviation
// (σ/√2n) and a share (√(p(1−p)/n)); each is allowed four of them. The seeds are fixed, so no run differs from another.

const limits = { thickness: 0.15, height: 0.1, fence: 0.2, grooveWidth: 0.05, film: 0.02 };
/** A flat tongue, so that clearance is linear in every source: W − (T − d₁ − d₂), all under. */
const flat = coatedJob({
  cuts: [cut('front', 'front', profile('rebate', 30, 9)), cut('back', 'back', profile('rebate', 20, 4.8))],
});
/** The same in a groove so wide that every joint goes together. */
const loose = { ...flat, frame: { ...flat.frame, groove: { ...flat.frame.groove, width: 7.4 } } };
const simulate = (options: Partial<SimulationOptions> = {}, job = flat) => {
  const joint = createJoint(job);
  const all = { count: 200_000, seed: 7, distribution: 'normal', ...options } as const;
  return simulateSpread(joint, listSources(joint.cuts, limits), job.fit, all).clearance;
};
const wholes = [0.15, 0.1, 0.1, 0.05, 0.04];

describe('the generator', () => {
  it('fills normals whose mean, deviation, skewness and kurtosis are those of a normal distribution', () => {
    const out = new Float64Array(200_001);
    createRandom(3).fillNormal(out);
    const sample = [...out];
    const n = sample.length;
    expect(Math.abs(mean(sample))).toBeLessThan(4 / Math.sqrt(n));
    expect(Math.abs(sampleStandardDeviation(sample) - 1)).toBeLessThan(4 / Math.sqrt(2 * n));
    expect(Math.abs(sampleSkewness(sample))).toBeLessThan(4 * Math.sqrt(6 / n));
    expect(Math.abs(sampleKurtosis(sample))).toBeLessThan(4 * Math.sqrt(24 / n));
    expect(sample.every((each) => Math.abs(each) < 6.7)).toBe(true);
  });

  it('makes of two whole numbers what logarithm, cosine and sine of the language make of them', () => {
    const ends = [0, 1, 2, 2 ** 22 - 1, 2 ** 22, 2 ** 31 - 1, 2 ** 31, 2 ** 31 + 1, 2 ** 32 - 2, 2 ** 32 - 1];
    const whole = new Uint32Array(20_000);
    xoshiro128(1, 2, 3, 4)(whole);
    ends.forEach((first, i) => {
      ends.forEach((second, k) => {
        whole.set([first, second], 2 * (ends.length * i + k));
      });
    });
    const out = new Float64Array(whole.length);
    fillNormalPairs(whole, out, 0, out.length);
    for (let i = 0; i < out.length; i += 2) {
      const radius = Math.sqrt(-2 * Math.log((whole[i]! + 1) * 2 ** -32));
      const angle = (whole[i + 1]! * 2 * Math.PI) / 2 ** 32;
      const apart = Math.max(
        Math.abs(out[i]! - radius * Math.cos(angle)),
        Math.abs(out[i + 1]! - radius * Math.sin(angle)),
      );
      if (!(apart < 1e-14)) expect.fail(`${whole[i]}, ${whole[i + 1]}: ${apart}`);
    }
    expect(out[0]).toBeCloseTo(Math.sqrt(64 * Math.LN2), 14);
  });

  it('spreads evenly: each tenth of the range holds a tenth, and neighbours do not follow each other', () => {
    const out = new Float64Array(200_000);
    createRandom(5).fillEven(out);
    const tenths = new Array<number>(10).fill(0);
    for (const each of out) tenths[Math.floor((each + 1) * 5)]!++;
    // Chi-squared with 9 degrees of freedom exceeds 27.88 once in a thousand (tables).
    const chi = tenths.reduce((sum, count) => sum + (count - 20_000) ** 2 / 20_000, 0);
    expect(chi).toBeLessThan(27.88);
    let following = 0;
    for (let i = 1; i < out.length; i++) following += out[i]! * out[i - 1]!;
    expect(Math.abs((following / out.length) * 3)).toBeLessThan(4 / Math.sqrt(out.length));
  });

  it('gives the published numbers of xoshiro128** from the state 1, 2, 3, 4', () => {
    // The reference C code's output, as several libraries print it in their own tests.
    const fill = xoshiro128(1, 2, 3, 4);
    const published = [
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ];
    // In two lists: the second goes on where the first stopped.
    const [first, second] = [new Uint32Array(4), new Uint32Array(6)];
    fill(first);
    fill(second);
    expect([...first, ...second]).toEqual(published);
  });

  it('refuses a seed that is no whole number', () => {
    expect(() => createRandom(1.5)).toThrow(new RangeError('a seed must be a whole number, got 1.5'));
  });
});

describe('simulated joints, linear case', () => {
  it('normal: mean, deviation, quantiles and shares of a normal distribution', () => {
    const { count, mean: middle, deviation, quantiles, shares } = simulate();
    const sigma = Math.hypot(...wholes) / 3;
    expect(Math.abs(middle - 0.2)).toBeLessThan((4 * sigma) / Math.sqrt(count));
    expect(Math.abs(deviation - sigma)).toBeLessThan((4 * sigma) / Math.sqrt(2 * count));
    const below = (clearance: number) => (1 + errorFunction((clearance - 0.2) / sigma / Math.SQRT2)) / 2;
    const expected = {
      'will-not-enter': below(0),
      'stops-short': 0,
      tight: below(0.05) - below(0),
      sliding: below(0.5) - below(0.05),
      loose: 1 - below(0.5),
    };
    for (const [verdict, share] of Object.entries(expected)) {
      // The reference is good to 1.2e-7.
      const error = 4 * Math.sqrt((share * (1 - share)) / count) + 1.2e-7;
      expect(Math.abs(shares[verdict as keyof typeof shares] - share), verdict).toBeLessThan(error);
    }
    // A quantile's standard error is √(p(1−p)/n) over the density there.
    const density = (z: number) => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI) / sigma;
    for (const [part, z] of Object.entries({
      '0.00135': -3,
      '0.025': -1.95996,
      '0.5': 0,
      '0.975': 1.95996,
      '0.99865': 3,
    })) {
      const p = Number(part);
      const error = (4 * Math.sqrt((p * (1 - p)) / count)) / density(z);
      expect(Math.abs(quantiles[part as keyof typeof quantiles] - (0.2 + z * sigma)), part).toBeLessThan(error);
    }
  });

  it('uniform: the variance of a sum of even spreads is a third of the squares, and nothing lies beyond the worst case', () => {
    const { count, mean: middle, deviation, histogram } = simulate({ distribution: 'uniform' });
    const sigma = Math.hypot(...wholes) / Math.sqrt(3);
    expect(Math.abs(middle - 0.2)).toBeLessThan((4 * sigma) / Math.sqrt(count));
    expect(Math.abs(deviation - sigma)).toBeLessThan((4 * sigma) / Math.sqrt(count));
    const sum = wholes.reduce((a, b) => a + b);
    expect(histogram.from).toBeCloseTo(0.2 - sum, 9);
    expect(histogram.from + histogram.step * histogram.counts.length).toBeCloseTo(0.2 + sum, 9);
    expect(histogram.counts.reduce((a, b) => a + b)).toBe(count);
  });
});

describe('the face step of simulated joints', () => {
  it('has the mean and the deviation of the front cut and the film when pressed forward', () => {
    const joint = createJoint(loose);
    const options = { count: 200_000, seed: 11, distribution: 'normal' } as const;
    const { frontFace } = simulateSpread(joint, listSources(joint.cuts, limits), loose.fit, options);
    const most = frontFace.most!;
    const sigma = Math.hypot(0.1, 0.02) / 3;
    expect(most.count).toBe(200_000);
    expect(Math.abs(most.mean - 1.5)).toBeLessThan((4 * sigma) / Math.sqrt(most.count));
    expect(Math.abs(most.deviation - sigma)).toBeLessThan((4 * sigma) / Math.sqrt(2 * most.count));
    // Pressed back it is T − W − setback − (back cut) + film.
    const least = frontFace.least!;
    const all = Math.hypot(0.15, 0.1, 0.05, 0.02) / 3;
    expect(
      Math.abs(least.mean - (20 - loose.frame.groove.width - loose.frame.groove.setback - 4.8 + 0.02)),
    ).toBeLessThan((4 * all) / Math.sqrt(least.count));
    expect(Math.abs(least.deviation - all)).toBeLessThan((4 * all) / Math.sqrt(2 * least.count));
  });

  it('is taken over the joints that go together, and is none where none does', () => {
    const joint = createJoint({ ...flat, frame: { ...flat.frame, groove: { ...flat.frame.groove, width: 5 } } });
    const options = { count: 1000, seed: 1, distribution: 'normal' } as const;
    const { clearance, frontFace } = simulateSpread(joint, listSources(joint.cuts, limits), flat.fit, options);
    expect(clearance.shares['will-not-enter']).toBe(1);
    expect(frontFace).toEqual({ least: null, most: null });
  });
});

describe('a simulation', () => {
  it('is the same for the same seed and another for another', () => {
    expect(simulate({ count: 5000 })).toEqual(simulate({ count: 5000 }));
    expect(simulate({ count: 5000, seed: 8 }).mean).not.toBe(simulate({ count: 5000 }).mean);
  });

  it('tells how far it is and can be stopped', () => {
    const joint = createJoint(flat);
    const heard: number[] = [];
    const options = { count: 1_000_000, seed: 1, distribution: 'normal' } as const;
    const stopped = simulateSpread(joint, listSources(joint.cuts, limits), flat.fit, options, (done) => {
      heard.push(done);
      return heard.length < 3;
    });
    expect(heard).toEqual([32_768, 65_536, 98_304]);
    expect(stopped.clearance.count).toBe(98_304);
    expect(Object.values(stopped.clearance.shares).reduce((a, b) => a + b)).toBeCloseTo(1, 12);
    const run = simulateInChunks(joint, listSources(joint.cuts, limits), flat.fit, { ...options, count: 40_000 });
    expect([run.next().value, run.next().value]).toEqual([32_768, 40_000]);
    expect(run.next()).toMatchObject({ done: true, value: { clearance: { count: 40_000 } } });
  });

  it.each([0, -5, 2.5, Number.NaN])('refuses to make %d joints', (count) => {
    expect(() => simulate({ count })).toThrow(
      new RangeError(`a simulation needs a whole number of joints above 0, got ${count}`),
    );
  });

  it('with nothing that varies makes the same joint every time', () => {
    const joint = createJoint(flat);
    const still = { thickness: 0, height: 0, fence: 0, grooveWidth: 0, film: 0 };
    const all = simulateSpread(joint, listSources(joint.cuts, still), flat.fit, {
      count: 1000,
      seed: 1,
      distribution: 'normal',
    }).clearance;
    expect(all.mean).toBeCloseTo(0.2, 12);
    expect(all.deviation).toBeLessThan(1e-12);
    expect(all.shares.sliding).toBe(1);
    expect(all.quantiles['0.5']).toBeCloseTo(0.2, 6);
  });
});
