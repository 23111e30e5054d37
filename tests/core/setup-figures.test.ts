// Figures of setting up against worked examples: rim-speed tables, marks per inch, published cutting energies, plane geometry.

import { answerPlan, evaluate, prepareJob, sayStep } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { chooseFeed, waveHeight } from '../../packages/core/src/setup/feed.ts';
import { feedAgainst, handOf } from '../../packages/core/src/setup/hand.ts';
import { splitPasses } from '../../packages/core/src/setup/passes.ts';
import { bandOf, powerAt } from '../../packages/core/src/setup/power.ts';
import { chooseSpeed, rimSpeed } from '../../packages/core/src/setup/speed.ts';
import { raiser, rules } from '../support/heads.ts';
import { planned, shopJob } from '../support/plans.ts';

describe('hand and feed (truth table: shaper makers’ manuals, a trade paper of 2008)', () => {
  it.each([
    ['under', 'counterclockwise', 1, 'right to left'],
    ['over', 'clockwise', 1, 'left to right'],
    ['over', 'counterclockwise', -1, 'right to left'],
    ['under', 'clockwise', -1, 'left to right'],
  ] as const)('%s %s', (run, rotation, hand, feed) => {
    expect(handOf(run, rotation)).toBe(hand);
    expect(feedAgainst(rotation)).toBe(feed);
  });

  it('keeps its hand when a head is turned over, and turning twice changes nothing', () => {
    const turn = ([run, rotation]: readonly [string, string]) =>
      [run === 'under' ? 'over' : 'under', rotation === 'clockwise' ? 'counterclockwise' : 'clockwise'] as const;
    for (const run of ['under', 'over'] as const)
      for (const rotation of ['clockwise', 'counterclockwise'] as const) {
        const [turnedRun, turnedRotation] = turn([run, rotation]);
        expect(handOf(turnedRun as never, turnedRotation as never)).toBe(handOf(run, rotation));
        expect(turn(turn([run, rotation]))).toEqual([run, rotation]);
      }
  });
});

describe('rim speed', () => {
  // Table worked out apart from the code, to 0.1 m/s.
  it.each([
    [80, 9000, 37.7],
    [100, 10_000, 52.4],
    [125, 6000, 39.3],
    [160, 6000, 50.3],
    [200, 4500, 47.1],
    [250, 7500, 98.2],
  ])('of %d mm at %d a minute is %d m/s', (d, n, v) => expect(rimSpeed(d, n)).toBeCloseTo(v, 0.9));

  it('is what a trade school’s rule of thumb makes of it, v = r[cm]·n/1000, 0.954 93 of exact', () => {
    expect((8 * 6000) / 1000 / rimSpeed(160, 6000)).toBeCloseTo(0.954_929_659, 8);
  });

  it('passes 150 km/h at 4500 a minute from 176.839 mm on (a safety sheet of 2023)', () => {
    expect(rimSpeed(176.839, 4500) * 3.6).toBeCloseTo(150, 3);
  });

  it('takes the highest speed within marks and rim, the fastest allowed where none is fast enough, none past the mark', () => {
    const machine = { speeds: [3000, 4500, 6000, 7500] };
    expect(chooseSpeed(raiser, machine, rules)).toMatchObject({ speed: 7500, tooSlow: false });
    expect(chooseSpeed({ ...raiser, maxSpeed: 7000 }, machine, rules)).toMatchObject({ speed: 6000 });
    expect(chooseSpeed({ ...raiser, maxSpeed: 4000 }, machine, rules)).toMatchObject({ speed: 3000, tooSlow: true });
    expect(chooseSpeed({ ...raiser, maxSpeed: 2900 }, machine, rules)).toBeUndefined();
    expect(chooseSpeed({ ...raiser, minSpeed: 7800 }, machine, rules)).toBeUndefined();
    expect(chooseSpeed({ ...raiser, cuttingDiameter: 250, maxSpeed: 9000 }, machine, rules)?.speed).toBe(4500);
  });
});

describe('knife marks', () => {
  it('are 20 an inch at 3600 a minute, 4 jointed knives and 60 ft/min (trade paper, 2009)', () => {
    const head = { knives: 4, jointed: true };
    const { pitch } = chooseFeed(head, { feeds: [60 * 0.3048] }, 3600, 42, rules);
    expect(25.4 / pitch).toBeCloseTo(20, 10);
  });

  it('come from one knife unless they are jointed', () => {
    const pitchOf = (jointed: boolean) => chooseFeed({ knives: 2, jointed }, { feeds: [6] }, 6000, 42, rules).pitch;
    expect([pitchOf(false), pitchOf(true)]).toEqual([1, 0.5]);
  });

  it('stand as high as plane geometry has it', () => {
    expect(waveHeight(80, 1)).toBeCloseTo(0.001_562_515_259, 12);
    expect(waveHeight(42, 1)).toBeCloseTo(0.002_976_295_933, 12);
    expect(waveHeight(42, 2)).toBeCloseTo(0.011_906_449_566, 12);
  });

  it('choose the fastest feed that keeps the pitch, the slowest where none does, and the greatest by hand', () => {
    const feed = (feeds: number[]) => chooseFeed(raiser, { feeds }, 6000, 42, rules);
    expect(feed([4, 6, 8])).toMatchObject({ feedRate: 6, feedBy: 'feeder', tooCoarse: false });
    expect(feed([8, 12])).toMatchObject({ feedRate: 8, tooCoarse: true });
    // 20 marks to the inch from one knife at 6000 a minute: 7.62 m/min.
    expect(feed([]).feedRate).toBeCloseTo(7.62, 10);
  });

  it('takes a feed that leaves just the greatest pitch, however that is rounded, and none that is a millionth faster', () => {
    for (let pitch = 0.1; pitch < 2; pitch += 0.0137)
      for (const speed of [2900, 4500, 7300]) {
        const head = { knives: 3, jointed: speed === 7300 };
        // Metres a minute: so many marks a minute, each so long.
        const just = ((head.jointed ? 3 : 1) * speed * pitch) / 1000;
        const feedOf = (most: number) => chooseFeed(head, { feeds: [just / 2, most] }, speed, 42, { knifeMark: pitch });
        expect(feedOf(just).feedRate).toBe(just);
        expect(feedOf(just * (1 + 1e-6)).feedRate).toBe(just / 2);
      }
  });
});

it('takes the power that published cutting energies give (particleboard 32.0 and 37.6 N/mm², Materials 2021)', () => {
  expect([32, 37.6, 40].map((k) => powerAt(k, 240.75, 6))).toEqual([
    expect.closeTo(770.4, 9),
    expect.closeTo(905.22, 9),
    expect.closeTo(963, 9),
  ]);
  expect(bandOf(963)).toEqual({ least: 481.5, likely: 963, most: 1926 });
});

describe('the ogee of the worked example, head of 160 mm, knife 1.5 mm in from its face', () => {
  const { plan } = planned(shopJob());
  const [raise] = plan.setups;

  it('has the worked heights, hole and fence', () => {
    expect(raise).toMatchObject({ cuttingPoint: 9, seat: -29.5, hole: { needed: 166, ring: 170 } });
    expect(raise!.fence).toMatchObject({ toAxis: 42, standsOut: 38, bar: { from: 9, to: 20 } });
    expect(raise!.fence.gap).toBeCloseTo(136.176_356_244 + 6, 8);
    expect(raise).toMatchObject({ speed: 6000, feedDirection: 'right to left', turnedOver: false, assumed: false });
    expect(raise!.rim).toBeCloseTo(50.265_482_457, 8);
  });

  it('leaves the cove the bar of the worked example, run above the stock after the raise', () => {
    const { plan: over } = planned(shopJob({ run: 'over', reversing: true }));
    expect(over.setups[1]).toMatchObject({ run: 'over', rotation: 'clockwise', turnedOver: true });
    expect(over.setups[1]!.fence.bar!.from).toBeCloseTo(9, 6);
    expect(over.setups[1]!.fence.bar!.to).toBeCloseTo(15.2, 6);
  });

  it('has the worked power on long grain and twice that on end grain', () => {
    expect(raise!.power.likely).toBeCloseTo((963 * raise!.feedRate) / 6, 6);
    expect(raise!.powerEnd.likely).toBeCloseTo(2 * raise!.power.likely, 9);
  });

  it('is split by height where the motor is weak: half the area 3.5308 mm less deep, no pass above what it takes', () => {
    const job = shopJob({ power: 0.8 });
    const { passes, feedRate } = planned(job).plan.setups[0]!;
    const most = (0.8 * 800 * 60) / (2 * 40 * feedRate);
    expect(passes.length).toBeGreaterThan(1);
    for (const { area } of passes) expect(area).toBeLessThanOrEqual(most * 1.001);
    expect(passes.reduce((sum, { area }) => sum + area, 0)).toBeCloseTo(240.75, 6);
    expect(passes.at(-1)).toMatchObject({ depth: 9, reach: 38 });
    expect(9 - passes.at(-2)!.depth).toBeLessThanOrEqual(1.6 + 1e-3);
  });
});

it('splits a cut into one pass where the motor takes it, and into equal areas else', () => {
  // A rebate 10 wide takes 10 mm² a millimetre of depth.
  const area = (depth: number) => 10 * depth;
  expect(splitPasses(10, 10, area, { greatestArea: null, lastPass: 1.6 })).toHaveLength(1);
  expect(splitPasses(10, 10, area, { greatestArea: 100, lastPass: 1.6 })).toHaveLength(1);
  const passes = splitPasses(10, 10, area, { greatestArea: 50, lastPass: 1.6 });
  // 84 mm² before the last pass: two passes of 42.
  expect(passes.map((pass) => pass.area)).toEqual([
    expect.closeTo(42, 1),
    expect.closeTo(42, 1),
    expect.closeTo(16, 1),
  ]);
  expect(splitPasses(10, 10, area, { greatestArea: 8, lastPass: 1.6 }).at(-1)!.area).toBeLessThanOrEqual(8.01);
});

it('leaves a job without a shop, a machine or a head unplanned', () => {
  const { shop, ...job } = shopJob();
  expect(answerPlan(prepareJob(job))).toBeUndefined();
  expect(answerPlan(prepareJob({ ...job, shop: { ...shop!, machines: {} } }))).toBeUndefined();
});

describe('what a test piece measures, by hand', () => {
  const thick = (job: Parameters<typeof planned>[0]) => planned(job).plan.setups.map(({ testPiece }) => testPiece);
  const measured = { panel: 'thickness: 20, measured: 19.6' };

  it('is on the stock as measured: 19.6 − 9 = 10.6, and 4.4 off the back above it leaves 6.2', () => {
    const pieces = thick(shopJob({ ...measured, run: 'over', reversing: true }));
    expect(pieces.map((piece) => piece?.thickness.toFixed(4))).toEqual(['10.6000', '6.2000']);
  });

  it('is a fresh piece where the set-up comes again: 19.6 less the second cut alone, which the sentence says', () => {
    const doors = '[{ name: d, quantity: 12, width: 330, height: 700, stile: 55, rail: 70 }]';
    const three =
      '[{ name: raise, side: front, knife: ogee }, { name: cove, side: back, knife: cove }, { name: bead, side: front, head: small, profile: { shape: rebate, reach: 4, depth: 9.2 } }]';
    const { plan } = planned(shopJob({ ...measured, doors, cuts: three, reversing: true }));
    const cove = plan.setups.find(({ cut }) => cut === 'cove')!;
    const taken = cove.run === 'over' ? 4.4 : 4.8;
    expect(cove.testPiece!.alone).toBeCloseTo(19.6 - taken, 6);
    const measures = plan.steps.filter(({ kind, cuts }) => kind === 'measure' && cuts.includes('cove'));
    expect(sayStep(measures.at(-1)!, plan, { units: 'mm', terms: 'british' })).toContain((19.6 - taken).toFixed(1));
    expect(measures).toHaveLength(2);
  });
});

describe('a cut that no machine can make', () => {
  const doors = '[{ name: d, quantity: 12, width: 330, height: 700, stile: 55, rail: 70 }]';
  // Two cuts of one code: neither bore is as wide as the spindle.
  const both = { raiser: ', bore: 30', small: ', bore: 30', doors };
  const machines = (spindle: number) =>
    `{ main: { speeds: [6000], seat: [-70, 90], opening: 220, nutDiameter: 48, spindle: ${spindle}, reversing: true } }`;

  it('is counted as often as it is said', () => {
    const { statements, problems } = evaluate(shopJob({ ...both, machines: machines(40) }));
    expect(problems.filter(({ severity }) => severity === 'error')).toHaveLength(2);
    expect(statements).toMatchObject({ canBeRun: false, errors: 2 });
    expect(statements.against).toHaveLength(1);
  });

  it('ends the order of work before blanks are ripped, whose ends lack it', () => {
    const kinds = (raiser: string) =>
      planned(shopJob({ ...both, raiser, machines: machines(30) })).plan.steps.map(({ kind }) => kind);
    expect(kinds(', bore: 30')).toContain('rip');
    const without = kinds(', bore: 35');
    expect(without).toContain('run-ends');
    for (const kind of ['rip', 'glue-up'] as const) expect(without).not.toContain(kind);
  });
});
