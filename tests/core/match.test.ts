import { matchKnives, type NamedProfile, readJob, type ShopKnife } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { raiser } from '../support/heads.ts';
import { jobOfOneCut, jobWithKnives, kept } from '../support/matching-jobs.ts';
import { Random } from '../support/random.ts';
import { randomProfile } from '../support/random-job.ts';
import { leastProcessorTime } from '../support/timing.ts';

describe('the knives of a shop for a cut', () => {
  it('find the planted one first, at the reach it was set to, among 40 others: 25 random shops', () => {
    const random = new Random(41);
    for (let i = 0; i < 25; i++) {
      const planted = randomProfile(random, 12);
      const depth = planted.depth + random.between(-0.5, 1);
      const reach = planted.reach + random.between(-1, 2);
      const others = Array.from({ length: 40 }, (_, k) => [`other ${k}`, kept(randomProfile(random, 12))] as const);
      const job = jobOfOneCut(planted, depth, reach, Object.fromEntries([...others, ['planted', kept(planted)]]));
      const matches = matchKnives(job, 'raise', 0);
      // Any rebate makes any other: those that are exact stand together.
      const exact = matches.filter(({ deviation }) => deviation < 1e-6);
      const found = exact.find(({ knife }) => knife === 'planted');
      expect(exact, `case ${i}`).toEqual(matches.slice(0, exact.length));
      expect(found, `case ${i}`).toBeDefined();
      if (planted.shape !== 'rebate') expect(exact, `case ${i}`).toHaveLength(1);
      expect(found!.reach, `case ${i}`).toBeCloseTo(reach, 6);
    }
  });

  it('find the planted one first among 200, also where a near one stands beside it: 3 random shops', () => {
    const random = new Random(2026);
    for (let i = 0; i < 3; i++) {
      const planted = { ...randomProfile(random, 12), shape: 'cove', shoulder: 0 } as const;
      const near = { ...planted, reach: planted.reach + 0.4 };
      const others = Array.from({ length: 198 }, (_, k) => [`other ${k}`, kept(randomProfile(random, 12))] as const);
      const knives = Object.fromEntries([
        ...others.slice(0, 99),
        ['near', kept(near)],
        ['planted', kept(planted)],
        ...others.slice(99),
      ]);
      const job = jobOfOneCut(planted, planted.depth + 0.3, planted.reach + 0.8, knives);
      const [first, second] = matchKnives(job, 'raise', 0);
      expect(first, `case ${i}`).toMatchObject({ knife: 'planted', reach: expect.closeTo(planted.reach + 0.8, 6) });
      expect(first!.deviation).toBeLessThan(1e-6);
      expect(second!.deviation).toBeGreaterThan(1e-3);
    }
  });

  it('are those whose section is known: one taken off the steel needs its head', () => {
    const random = new Random(44);
    const profile = randomProfile(random, 12);
    const steel = { profile, measured: 'knife' } as const;
    const knives = {
      wood: kept(profile),
      bare: steel,
      mounted: { ...steel, head: 'raiser' },
      strange: { ...steel, head: 'gone' },
    };
    const matches = matchKnives(jobOfOneCut(profile, profile.depth, profile.reach, knives), 'raise', 0);
    expect(matches.map(({ knife }) => knife)).toEqual(['wood', 'mounted']);
    // Steel leaves a section less deep than it stands: the rake leans it back.
    expect(matches[0]!.deviation).toBeLessThan(1e-9);
    expect(matches[1]!.deviation).toBeGreaterThan(1e-3);
  });

  it('deviate by what a grid of settings finds, never more', () => {
    const random = new Random(43);
    for (let i = 0; i < 20; i++) {
      const [wanted, other] = [randomProfile(random, 12), randomProfile(random, 12)];
      const [match] = matchKnives(jobOfOneCut(wanted, wanted.depth, wanted.reach, { other: kept(other) }), 'raise', 0);
      let least = Number.POSITIVE_INFINITY;
      for (let reach = 1; reach < 80; reach += 0.25)
        least = Math.min(least, offBy(wanted, other, wanted.depth, reach, least));
      // The grid of places misses the very edge of a step; the search may not miss the grid.
      expect(match!.deviation, `case ${i}`).toBeLessThan(least + 0.03);
    }
  });

  it('say the fit that each gives, and which can be run', () => {
    const raise: NamedProfile = { shape: 'bevel', reach: 38, depth: 9, land: 11, shoulder: 1.5, balance: 0.5 };
    const headless: ShopKnife = { profile: raise, measured: 'wood' };
    const wide: NamedProfile = { ...raise, reach: 47 };
    const job = jobOfOneCut(raise, 9, 38, { raise: kept(raise), headless, wide: kept(wide) });
    const matches = matchKnives(job, 'raise');
    expect(matches.map(({ knife, works }) => [knife, works]).slice(0, 2)).toEqual([
      ['headless', false],
      ['raise', true],
    ]);
    expect(matches[1]).toMatchObject({ head: 'raiser', reach: 38, against: [] });
    expect(matches[1]!.deviation).toBeLessThan(1e-9);
  });

  it('do not answer for a cut of the frame that is called as the panel’s is', () => {
    const raise: NamedProfile = { shape: 'bevel', reach: 38, depth: 9, land: 11, shoulder: 1.5, balance: 0.5 };
    const ovolo: NamedProfile = { shape: 'ovolo', reach: 6, depth: 6, land: 0, shoulder: 0, balance: 0.5 };
    const job = jobOfOneCut(raise, 9, 38, { raise: kept(raise) });
    const shop = { ...job.shop!, heads: { ...job.shop!.heads, tall: { ...raiser, bodyDiameter: 400 } } };
    const frame = { ...job.frame, sticking: ovolo, stickingHead: 'tall' };
    const cuts = [{ ...job.cuts[0]!, name: 'sticking' }];
    expect(matchKnives({ ...job, shop, frame, cuts }, 'sticking')[0]).toMatchObject({ works: true, against: [] });
  });

  it('are matched in 200 ms for 200 of them, in twice that at most on a busy machine', () => {
    const random = new Random(47);
    const job = jobWithKnives(random, 200);
    matchKnives(job, 'raise');
    const least = leastProcessorTime(() => matchKnives(job, 'raise'), 400, 5);
    console.log(`match on 200 knives: ${least.toFixed(0)} ms`);
    expect(least).toBeLessThan(400);
  });

  it('refuse a cut that is not there, and know none without a shop', () => {
    const raise: NamedProfile = { shape: 'bevel', reach: 38, depth: 9, land: 0, shoulder: 0, balance: 0.5 };
    const { shop: _, ...bare } = jobOfOneCut(raise, 9, 38, {});
    expect(matchKnives(bare, 'raise')).toEqual([]);
    expect(() => matchKnives(bare, 'cove')).toThrow('there is no cut cove');
    expect(readJob('').job).toBeNull();
  });
});

/** Greatest difference in depth on a grid, both sections from their sizes alone, or the first that reaches `limit`. */
function offBy(wanted: NamedProfile, other: NamedProfile, depth: number, reach: number, limit: number): number {
  let most = 0;
  for (let a = 0.013; a < 80 && most < limit; a += 0.05)
    most = Math.max(most, Math.abs(at(wanted, a) - Math.max(0, at(other, a + other.reach - reach, depth))));
  return most;
}

function at(p: NamedProfile, a: number, depth: number = p.depth): number {
  const down = depth - p.depth;
  const run = p.reach - p.land;
  const rise = p.depth - p.shoulder;
  const r = (run * run + rise * rise) / (2 * rise);
  if (a > p.reach) return 0;
  if (p.shape === 'rebate' || a <= p.land) return p.depth + down;
  const x = a - p.land;
  const hollow = (radius: number, from: number) => p.depth - radius + Math.sqrt(radius * radius - from * from);
  const round = (radius: number, back: number) => p.shoulder + radius - Math.sqrt(radius * radius - back * back);
  if (p.shape === 'bevel') return p.depth - (rise * x) / run + down;
  if (p.shape === 'cove') return hollow(r, x) + down;
  if (p.shape === 'ovolo') return round(r, p.reach - a) + down;
  const turn = p.balance * run;
  return (x <= turn ? hollow(p.balance * r, x) : round((1 - p.balance) * r, p.reach - a)) + down;
}
