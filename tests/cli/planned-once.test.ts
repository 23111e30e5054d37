// Commands that want the report and the plan work the plan out once.
import { describe, expect, it, vi } from 'vitest';
import { run } from './command.ts';

const counted = vi.hoisted(() => ({ plans: 0 }));

vi.mock('../../packages/core/src/setup/make-plan.ts', async (load) => {
  const real = await load<typeof import('../../packages/core/src/setup/make-plan.ts')>();
  return {
    ...real,
    makePlan: (...given: Parameters<typeof real.makePlan>) => {
      counted.plans += 1;
      return real.makePlan(...given);
    },
  };
});

describe('the plan is worked out once', () => {
  it.each([
    ['plan', ['plan', 'examples/coped-frame/job.yaml']],
    ['plan as JSON', ['plan', 'examples/coped-frame/job.yaml', '--json']],
    ['quote', ['quote', 'examples/wardrobe/job.yaml', '--date', '2026-05-04']],
  ])('%s', async (_, argv) => {
    counted.plans = 0;
    const { status } = await run(argv);
    expect(status).toBe(0);
    expect(counted.plans).toBe(1);
  });
});
