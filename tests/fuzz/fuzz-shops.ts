import { evaluate, readJob } from '@fielded/core';
import { Random } from '../support/random.ts';
import type { Finding } from './fuzz-jobs.ts';

/** A shop with one head and one knife on it, measured in the wood or on the steel, and a job that runs it; odd but readable sizes. */
export function fuzzShop(seed: number): Finding[] {
  const random = new Random(seed);
  const { job, shop } = randomShopJob(random);
  try {
    return evaluateShopJob(job, shop).map((what) => ({ seed, what }));
  } catch (error) {
    return [{ seed, what: `threw ${error}` }];
  }
}

/** Reads and evaluates a job with its shop, and names every figure of the report that is no number. */
export function evaluateShopJob(jobText: string, shopText: string): string[] {
  const { job } = readJob(jobText, { loadShop: () => shopText });
  return job === null ? [] : notNumbers(evaluate(job), 'report');
}

function notNumbers(value: unknown, at: string): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${at} is ${value}`];
  if (typeof value === 'string') return value.includes('NaN') ? [`${at} says NaN`] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => notNumbers(inner, `${at}.${key}`));
}

function randomShopJob(random: Random): { job: string; shop: string } {
  const diameter = random.between(60, 200);
  const reach = random.between(5, diameter / 2);
  const shape = random.oneOf(['rebate', 'bevel', 'cove', 'ovolo', 'ogee']);
  const land = shape === 'rebate' || random.unit() < 0.5 ? 0 : random.between(0, reach * 0.6);
  const depth = random.between(1, Math.min(14, reach - land));
  const measured = random.oneOf(['knife', 'wood']);
  const angles = `rake: ${random.between(0, 45)}, shear: ${random.between(-30, 30)}, wedge: ${random.between(25, 60)}`;
  const body = `bodyDiameter: ${random.between(10, diameter * 0.9)}, height: ${random.between(10, 60)}`;
  const knife = `knifeThickness: ${random.between(2, 10)}, limiterGap: ${random.between(0.5, 3)}`;
  const cut = `side: ${random.oneOf(['back', 'front'])}, knife: k, presented: ${random.oneOf(['flat', 'on-edge', '30'])}`;
  return {
    shop: [
      'fielded: 1',
      `knives: { k: { shape: ${shape}, reach: ${reach}, depth: ${depth}, land: ${land}, head: h, measured: ${measured} } }`,
      `heads: { h: { cuttingDiameter: ${diameter}, ${body}, ${angles}, knives: 2, maxSpeed: 8000, ${knife} } }`,
    ].join('\n'),
    job: [
      'fielded: 1',
      'shop: ./shop.yaml',
      'panel: { thickness: 28 }',
      'frame: { thickness: 30, groove: { width: 8, depth: 11, setback: 8 }, swellGap: 2 }',
      `cuts: [{ name: c, ${cut} }]`,
    ].join('\n'),
  };
}
