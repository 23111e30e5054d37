// A cut whose head no machine takes: which other head of the shop would make it, with the figures that its own plan then has.

import type { Head, Job, ShopKnife } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { answerKnives, canGrindFor } from '../../packages/core/src/report/knives.ts';
import { readPlanJob } from '../fuzz/fuzz-plans.ts';
import { planned, shopJob } from '../support/plans.ts';
import { Random } from '../support/random.ts';

const MACHINES =
  '{ main: { speeds: [3000, 4500, 6000], seat: [-70, 90], opening: 220, rings: [140, 170, 220], nutDiameter: 48, feeds: [4, 6, 8], spindle: 30 } }';

/** The worked example on a spindle of 30 mm, its raiser bored 35, with more heads and knives in the shop. */
function offBore(heads: Record<string, Partial<Head>>, knives: Record<string, Partial<ShopKnife>> = {}): Job {
  const job = shopJob({ machines: MACHINES, raiser: ', bore: 35', small: ', bore: 30' });
  const shop = job.shop!;
  const raiser = shop.heads.raiser!;
  const added = Object.fromEntries(
    Object.entries(heads).map(([name, head]) => [name, { ...raiser, bore: 30, ...head }]),
  );
  const kept = Object.fromEntries(
    Object.entries(knives).map(([name, knife]) => [name, { ...shop.knives.ogee!, ...knife }]),
  );
  return { ...job, shop: { ...shop, heads: { ...shop.heads, ...added }, knives: { ...shop.knives, ...kept } } };
}

const problemOf = (job: Job) => planned(job).problems.find(({ code }) => code === 'cannot-be-run')!;

describe('a cut that its own head cannot make', () => {
  it('could be made by another head: the plan says which, and how it would stand', () => {
    const job = offBore({ spare: { cuttingDiameter: 150 } });
    const { plan } = planned(job);
    expect(plan.setups.map(({ cut }) => cut)).toEqual(['cove']);
    expect(plan.otherHeads.map(({ cut, head, knife, machine, run }) => [cut, head, knife, machine, run])).toEqual([
      ['raise', 'spare', null, 'main', 'under'],
    ]);
    // R 75 less a reach of 38.
    expect(plan.otherHeads[0]).toMatchObject({ cuttingPoint: 9, seat: null, fence: { toAxis: 37 }, speed: 6000 });
    const problem = problemOf(job);
    expect(problem.severity).toBe('error');
    expect(problem.message).toContain(
      'The head "spare" would, with a knife ground for it: under the stock on "main", spindle counterclockwise seen from above, its deepest point 9 mm above the table, 37 mm from the fence to the axis, 6000 a minute.',
    );
  });

  it('the knife kept in that head is named where it has the same profile, and can be written into the job', () => {
    const job = offBore({ spare: {} }, { 'ogee-b': { head: 'spare', fromFace: 2.5 } });
    const [other] = planned(job).plan.otherHeads;
    expect(other).toMatchObject({ head: 'spare', knife: 'ogee-b', seat: 9 + 2.5 - 40 });
    expect(problemOf(job).message).toContain('The head "spare" would, with the knife ogee-b: ');
    expect(problemOf(job).advice![0]!.writes).toEqual([{ path: ['cuts', 0, 'knife'], word: 'ogee-b' }]);
    // Done so, it is set up just as was said.
    const cuts = job.cuts.map((cut, k) => (k === 0 ? { ...cut, head: 'spare', knife: 'ogee-b' } : cut));
    expect(planned({ ...job, cuts }).plan.setups[0]).toMatchObject({
      seat: other!.seat,
      fence: other!.fence,
      speed: other!.speed,
      passes: other!.passes,
    });
  });

  it('is not offered a head that no machine takes, nor one that its knife does not fit', () => {
    const { plan } = planned(
      offBore({
        large: { cuttingDiameter: 230 },
        thick: { bore: 35 },
        slim: { height: 8 },
        fast: { minSpeed: 9000, maxSpeed: 12_000 },
      }),
    );
    expect(plan.otherHeads).toEqual([]);
    expect(problemOf(offBore({})).advice ?? []).toEqual([]);
  });

  it('leaves the ways and every other key of the plan as they were', () => {
    const [with_, without] = [planned(offBore({ spare: {} })).plan, planned(offBore({})).plan];
    expect(with_.ways).toEqual(without.ways);
    expect(with_.setups).toEqual(without.setups);
    expect(planned(shopJob()).plan.otherHeads).toEqual([]);
  });

  it('goes for a cut on the frame too', () => {
    const base = offBore({ spare: { cuttingDiameter: 120 } });
    const sticking = { shape: 'ovolo', reach: 6, depth: 5, land: 0, shoulder: 1, balance: 0.5 } as const;
    const { plan } = planned({ ...base, frame: { ...base.frame, sticking, stickingHead: 'raiser' } });
    expect(plan.otherHeads.filter(({ of }) => of === 'frame').map(({ cut, head }) => [cut, head])).toContainEqual([
      'sticking',
      'spare',
    ]);
  });
});

describe('whether a knife could be ground for a head', () => {
  it('is what the knife itself, worked out whole, has for errors: odd heads, tilts and steel drawn at random', () => {
    const found = { can: 0, cannot: 0 };
    for (let seed = 1; seed <= 30; seed++) {
      const { job } = readPlanJob(new Random(seed));
      if (job === null) continue;
      for (const cut of job.cuts)
        for (const head of Object.keys(job.shop!.heads)) {
          const moved = { ...cut, head };
          const problems = answerKnives({ job: { ...job, cuts: [moved] } }, cut.name)!.problems;
          const without = problems.every(({ severity }) => severity !== 'error');
          expect(canGrindFor(job, moved), `seed ${seed}, ${cut.name} in ${head}`).toBe(without);
          found[without ? 'can' : 'cannot']++;
        }
    }
    expect(found.can).toBeGreaterThan(8);
    expect(found.cannot).toBeGreaterThan(8);
  });
});
