import { describe, expect, it } from 'vitest';
import { evaluate } from '../../packages/core/src/report/evaluate.ts';
import { adviseRuns } from '../../packages/core/src/report/run-advice.ts';
import { simulateJob } from '../../packages/core/src/report/spread.ts';
import { createJoint } from '../../packages/core/src/spread/joint.ts';
import type { SpreadLimits } from '../../packages/core/src/spread/limits.ts';
import { reportSpread } from '../../packages/core/src/spread/report.ts';
import { listSources } from '../../packages/core/src/spread/sources.ts';
import { stackFigure } from '../../packages/core/src/spread/stack.ts';
import { FEW } from '../support/few-joints.ts';
import { coatedJob, cut, plainJob, profile, wedgeJob } from './joints-to-spread.ts';

const limits: SpreadLimits = { thickness: 0.15, height: 0.1, fence: 0.2, grooveWidth: 0.05, film: 0.02 };
const none: SpreadLimits = { thickness: 0, height: 0, fence: 0, grooveWidth: 0, film: 0 };
const clearanceOf = (job = coatedJob(), within = limits) => {
  const joint = createJoint(job);
  return stackFigure(joint, listSources(joint.cuts, within), 'clearance');
};
const slopes = (stack: ReturnType<typeof clearanceOf>) =>
  Object.fromEntries(stack.sources.map(({ name, slope }) => [name, Number(slope.toFixed(9)) + 0]));

/** Flat tongue: rebates on both faces, so that the clearance is W − (T − d₁ − d₂) and nothing else. */
const flatJob = (runs: readonly ['under' | 'over', 'under' | 'over']) =>
  coatedJob({
    cuts: [
      cut('front', 'front', profile('rebate', 30, 9), { run: runs[0] }),
      cut('back', 'back', profile('rebate', 20, 4.8), { run: runs[1] }),
    ],
  });

describe('a flat tongue against the closed form', () => {
  // With c = W − (T − d₁ − d₂) the slopes are ±1 and film counts twice; common practice for over and under.
  it.each([
    [['under', 'under'], -1],
    [['under', 'over'], 0],
    [['over', 'under'], 0],
    [['over', 'over'], 1],
  ] as const)('run %j it follows the stock %d for one', (runs, thickness) => {
    const stack = clearanceOf(flatJob(runs));
    // A cut that is out of square goes less deep at the mouth than at the tip, or the tip counts: half the slope of one way.
    const wedge = -(9 * Math.tan(Math.PI / 18000)) / 0.02;
    expect(slopes(stack)).toEqual({
      'panel.thickness': thickness,
      'front.height': 1,
      'front.fence': 0,
      'front.square': Number(wedge.toFixed(9)),
      'back.height': 1,
      'back.fence': 0,
      'back.square': Number(wedge.toFixed(9)),
      'frame.groove.width': 1,
      'frame.groove.depth': 0,
      'frame.groove.setback': 0,
      'panel.size': 0,
      film: -2,
      moisture: 0,
    });
    const own = [0.15 * Math.abs(thickness), 0.1, 0.1, 0.05, 0.04];
    const sum = own.reduce((a, b) => a + b);
    const root = Math.hypot(...own);
    expect(stack.nominal).toBeCloseTo(0.2, 12);
    expect(stack.worst[0]).toBeCloseTo(0.2 - sum, 12);
    expect(stack.worst[1]).toBeCloseTo(0.2 + sum, 12);
    expect(stack.rss[0]).toBeCloseTo(0.2 - root, 12);
    expect(stack.rss[1]).toBeCloseTo(0.2 + root, 12);
  });

  it('lists the largest contribution first, and their shares make one', () => {
    const { sources } = clearanceOf(flatJob(['under', 'under']));
    expect(sources[0]).toMatchObject({ name: 'panel.thickness', contribution: 0.15 });
    const ordered = sources.map((source) => source.contribution);
    expect(ordered).toEqual([...ordered].sort((a, b) => b - a));
    expect(sources.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
  });

  it('steps the front face by the front cut and the film when pressed forward, by the back cut, groove and film when pressed back', () => {
    const joint = createJoint(flatJob(['under', 'over']));
    const sources = listSources(joint.cuts, limits);
    const most = stackFigure(joint, sources, 'frontMost');
    expect(most.nominal).toBeCloseTo(9 - 7.5, 12);
    expect(most.worst.map((face) => face.toFixed(9))).toEqual(['1.380000000', '1.620000000']);
    const least = stackFigure(joint, sources, 'frontLeast');
    expect(least.nominal).toBeCloseTo(1.3, 12);
    const sum = 0.1 + 0.05 + 0.02;
    expect(least.worst[0]).toBeCloseTo(1.3 - sum, 12);
    expect(least.worst[1]).toBeCloseTo(1.3 + sum, 12);
  });
});

describe('a wedge', () => {
  it('takes a share of the fence: the slope of the bevel', () => {
    // 14 mm deep at the edge, 2 at 30 in: 0.4 mm of depth for 1 mm of reach.
    expect(slopes(clearanceOf(wedgeJob()))).toMatchObject({
      'bevel.fence': 0.4,
      'bevel.height': 1,
      'panel.thickness': -1,
    });
  });

  it('bears on its whole insertion: worst case and nominal are those of the re-cut section', () => {
    const job = wedgeJob();
    const stack = clearanceOf(job, { ...none, fence: 0.5, height: 0.3 });
    expect(stack.nominal).toBe(evaluate(job).fit.clearance);
    const set = (height: number, fence: number) => {
      const [bevel] = job.cuts;
      const moved = { ...bevel!, depth: bevel!.depth + height, reach: bevel!.reach + fence };
      return evaluate({ ...job, cuts: [moved] }).fit.clearance!;
    };
    expect(stack.worst[0]).toBeCloseTo(set(-0.3, -0.5), 9);
    expect(stack.worst[1]).toBeCloseTo(set(0.3, 0.5), 9);
  });

  it('stops at its land: worst cases lie on either side of the kink, which a slope alone would miss', () => {
    const job = wedgeJob({ cuts: [cut('bevel', 'front', profile('bevel', 30, 14, 9, 2))] });
    // The land ends where the tongue does: a fence set out by 0.5 brings the bevel in, set in changes nothing.
    const stack = clearanceOf(job, { ...none, fence: 0.5 });
    expect(stack.worst[1]).toBe(stack.nominal);
    expect(stack.worst[0]).toBeCloseTo(stack.nominal - (0.5 * 12) / 21, 9);
  });
});

it('finds a worst case that lies inside a ±, where a surface wanders', () => {
  // On edge, a hump 1 mm high between two flats 8 deep: only with the fence as set does the tongue end on its crest.
  const job = coatedJob({
    cuts: [cut('hump', 'front', { shape: 'outline', reach: 20, depth: 8, chain: humpChain() }, { tilt: Math.PI / 2 })],
  });
  const joint = createJoint(job);
  const sources = listSources(joint.cuts, { ...none, height: 3 });
  const stack = stackFigure(joint, sources, 'clearance');
  // Spindle height slides the panel along: moved out by 3 the crest is well within, by 1 in it is clear of it.
  expect(stack.worst[0]).toBeCloseTo(stack.nominal, 9);
  expect(stack.worst[1]).toBeCloseTo(stack.nominal + 1, 9);
});

function humpChain() {
  const points = [
    [0, 8],
    [8, 8],
    [9, 7],
    [10, 8],
    [20, 8],
    [20, 0],
  ] as const;
  return points.slice(1).map(([x1, y1], i) => {
    const [x0, y0] = points[i]!;
    return { x0, y0, x1, y1, cx: 0, cy: 0, r: 0, turn: 0 as const };
  });
}

it('a job without a spread has none to simulate', () => {
  const options = { count: 10, seed: 1, distribution: 'normal' } as const;
  expect(() => [...simulateJob(plainJob(), options)]).toThrow(RangeError);
  expect(() => [...simulateJob(plainJob({ spread: limits }), options)]).not.toThrow();
});

describe('the other ways to run', () => {
  it('says that face down for both takes the stock out of it', () => {
    const { arrangements } = reportSpread(flatJob(['under', 'under']), limits, undefined, FEW.simulation);
    expect(arrangements.map(({ runs, given }) => [runs.join(' '), given])).toEqual([
      ['under over', false],
      ['over under', false],
      ['under under', true],
      ['over over', false],
    ]);
    expect(arrangements[0]!.worst[1] - arrangements[0]!.worst[0]).toBeCloseTo(0.58, 9);
    expect(arrangements[2]!.worst[1] - arrangements[2]!.worst[0]).toBeCloseTo(0.88, 9);
  });

  it('are each what the job run so has, also on stock that measures less', () => {
    const cuts = [
      cut('raise', 'front', profile('bevel', 38, 9, 4, 1)),
      cut('back relief', 'back', profile('cove', 14, 4.8, 9), { run: 'over' }),
    ];
    const job = plainJob({ cuts, panel: { thickness: 20, measured: 19.6, sawn: 'flat' }, spread: limits });
    const { arrangements } = evaluate(job, FEW).spread!;
    expect(arrangements).toHaveLength(4);
    for (const { runs, nominal, worst, rss, given } of arrangements) {
      const run = { ...job, cuts: cuts.map((each, k) => ({ ...each, run: runs[k]! })) };
      const own = evaluate(run, FEW).spread!.arrangements.find((each) => each.given)!;
      expect(given).toBe(runs.join(' ') === 'under over');
      expect(nominal).toBeCloseTo(own.nominal, 12);
      expect(worst).toEqual(own.worst.map((figure) => expect.closeTo(figure, 9)));
      expect(rss).toEqual(own.rss.map((figure) => expect.closeTo(figure, 9)));
    }
  });

  it('are advised by what they do to the stock’s part in it', () => {
    const advised = (runs: readonly ('under' | 'over')[], thickness: number, tilt = 0) => {
      const cuts = [
        cut('raise', 'front', profile('ogee', 38, 9, 11, 1.5), { run: runs[0]!, tilt }),
        cut('back relief', 'back', profile('cove', 14, 4.8, 9), { run: runs[1]!, tilt }),
      ];
      const { spread, section } = evaluate(plainJob({ cuts, spread: { ...limits, thickness } }), FEW);
      return adviseRuns(spread!, section.cuts, 'mm');
    };
    // One face on the table for both: one cut goes deeper by what the stock is thicker, and the tongue stays.
    expect(advised(['under', 'over'], 0.2)).toContain('does not matter to the clearance');
    expect(advised(['under', 'under'], 0.2)).toContain('then no longer matters, and at the very worst');
    // Stock without a ± makes nothing worse; what it would do is still said.
    expect(advised(['under', 'under'], 0)).toContain('then no longer matters to the clearance');
    // On edge there is one way, and the tongue is what the stock leaves.
    expect(advised(['under', 'under'], 0.2, Math.PI / 2)).toContain('one for one');
  });

  it('leaves a cut on edge as it is', () => {
    const job = coatedJob({
      cuts: [
        cut('raise', 'front', profile('ogee', 38, 9, 11, 1.5), { tilt: Math.PI / 2 }),
        cut('back relief', 'back', profile('cove', 14, 4.8, 9)),
      ],
    });
    const { arrangements } = reportSpread(job, limits, undefined, FEW.simulation);
    expect(arrangements.map(({ runs }) => runs[0])).toEqual(['under', 'under']);
  });

  it('turns whole faces over where there are many cuts', () => {
    const cuts = Array.from({ length: 6 }, (_, k) =>
      cut(`cut ${k}`, k < 3 ? 'front' : 'back', profile('rebate', 20 - k, 3 + k / 4), {
        run: k === 1 ? 'over' : 'under',
      }),
    );
    const runs = reportSpread(coatedJob({ cuts }), limits, undefined, FEW.simulation).arrangements.map((each) =>
      each.runs.join(' '),
    );
    expect(runs).toContain('under over under under under under');
    expect(runs).toContain('over over over under under under');
    expect(runs).toHaveLength(5);
  });
});

describe('the report agrees with the fit', () => {
  it.each([
    ['plain', coatedJob()],
    ['wedge', wedgeJob()],
    ['stock off', coatedJob({ panel: { thickness: 20, measured: 20.2, sawn: 'flat' } })],
    ['on edge', wedgeJob({ cuts: [cut('bevel', 'front', profile('bevel', 30, 14, 0, 2), { tilt: Math.PI / 2 })] })],
    ['tilted', wedgeJob({ cuts: [cut('bevel', 'front', profile('bevel', 30, 14, 0, 2), { tilt: 0.2 })] })],
  ])('%s', (_, job) => {
    const { fit } = evaluate(job);
    const spread = reportSpread(job, limits, undefined, FEW.simulation);
    expect(spread.clearance.nominal).toBeCloseTo(fit.clearance!, 12);
    expect(spread.frontFace.most.nominal).toBeCloseTo(fit.frontFace!.most, 12);
    expect(spread.frontFace.least.nominal).toBeCloseTo(fit.frontFace!.least, 12);
  });
});

describe('bad input is named', () => {
  it.each([
    'thickness',
    'height',
    'fence',
    'grooveWidth',
    'film',
    'moisture',
    'setback',
    'grooveDepth',
    'panelSize',
    'square',
  ] as const)('negative %s', (name) => {
    const call = () => reportSpread(coatedJob(), { ...limits, [name]: -0.1 }, undefined, FEW.simulation);
    expect(call).toThrow(new RangeError(`spread.${name} is a ± and must be 0 or more, got -0.1`));
  });
});
