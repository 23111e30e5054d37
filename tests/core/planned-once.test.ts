// What wants the report and the plan works the plan out once: a machine's feeds, which only planning reads, are read no more often.
import { answerPlan, evaluateWithPlan, type Job, prepareJob, quoteJob } from '@fielded/core';
import { expect, it } from 'vitest';
import { shopJob } from '../support/plans.ts';

/** A job whose machine counts how often its feeds are read. */
function counting(): { job: Job; reads: () => number } {
  const job = shopJob();
  const shop = job.shop!;
  const { feeds, ...main } = shop.machines.main!;
  let count = 0;
  const counted = Object.defineProperty({ ...main }, 'feeds', {
    enumerable: true,
    get: () => {
      count += 1;
      return feeds;
    },
  }) as typeof shop.machines.main;
  const rates = { currency: 'EUR', hour: 50, setUp: 0.5, margin: 0, validDays: 30, terms: [] };
  return {
    job: { ...job, shop: { ...shop, machines: { main: counted! }, rates } as unknown as NonNullable<Job['shop']> },
    reads: () => count,
  };
}

function readsOf(use: (job: Job) => unknown): number {
  const { job, reads } = counting();
  use(job);
  return reads();
}

it('a report with its plan, and a quote, plan once', () => {
  const once = readsOf((job) => answerPlan(prepareJob(job)));
  expect(once).toBeGreaterThan(0);
  expect(readsOf((job) => [answerPlan(prepareJob(job)), answerPlan(prepareJob(job))])).toBe(2 * once);
  expect(readsOf((job) => evaluateWithPlan(job))).toBe(once);
  expect(readsOf((job) => quoteJob(job, { date: '2026-05-04' }))).toBe(once);
});
