// The frame's own cuts planned like the panel's: figures from plane geometry, their places in the order of work, what stands against them.

import { answerKnives, type Job, type Plan, prepareJob, sayStep } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { copeProfile } from '../../packages/core/src/joint/cope.ts';
import { planned, shopJob } from '../support/plans.ts';

const OVOLO = { shape: 'ovolo', reach: 6, depth: 5, land: 0, shoulder: 1, balance: 0.5 } as const;
const COVE = { shape: 'cove', reach: 5, depth: 4, land: 0, shoulder: 0, balance: 0.5 } as const;

/** The worked example with a sticking, its cope and an edge on the back, all in the head of 120 mm. */
function framed(changes: Partial<Job['frame']> = {}, base = shopJob()): Job {
  const frame = {
    ...base.frame,
    sticking: OVOLO,
    stickingHead: 'small',
    backEdge: { profile: COVE, head: 'small' },
    ...changes,
  };
  return { ...base, frame };
}

const namesOf = ({ setups }: Plan) => setups.map(({ of, cut }) => `${of} ${cut}`);
const said = (job: Job) => {
  const { plan } = planned(job);
  return plan.steps.map((step) => sayStep(step, plan, { units: job.units }));
};

describe("the frame's own cuts", () => {
  const { plan } = planned(framed());
  const [cope, sticking] = plan.setups;
  const backEdge = plan.setups.at(-1)!;

  it('are set up before and after the panel’s: cope, sticking, panel, and the back’s arris after glue-up', () => {
    expect(namesOf(plan)).toEqual(['frame cope', 'frame sticking', 'panel raise', 'panel cove', 'frame back edge']);
    const kinds = plan.steps.map(({ kind, cuts, panels }) => [kind, ...cuts, panels].join(' '));
    const order = [
      'run-ends cope frame',
      'run-edges sticking frame',
      'run-ends raise all',
      'glue-up all',
      'run-edges back edge frame',
    ];
    const places = order.map((step) => kinds.indexOf(step));
    expect(places).not.toContain(-1);
    expect([...places].sort((one, other) => one - other)).toEqual(places);
    expect(plan.setUpCount).toBe(5);
    expect(plan.correction).toHaveLength(5);
  });

  it('have every figure of a set-up, by plane geometry', () => {
    // The cope goes down to the groove's front wall, 7.5, and in by the tenon's length, 11; R 60.
    expect(cope).toMatchObject({
      cuttingPoint: 7.5,
      seat: null,
      hole: { needed: 126, ring: 140 },
      fence: { toAxis: 49, standsOut: 11, bar: { from: 7.5, to: 22 } },
      frame: {
        kind: 'cope',
        tenon: { length: 11, thickness: 6.4 },
        shoulder: { length: 11 },
      },
      notChecked: expect.arrayContaining(['shop.knives']),
    });
    expect(cope!.frame).toMatchObject({ shoulder: { depth: expect.closeTo(22 - 7.5 - 6.4, 9) } });
    expect(cope!.fence.gap).toBeCloseTo(2 * Math.sqrt(60 ** 2 - 49 ** 2) + 6, 9);
    expect(sticking).toMatchObject({
      cuttingPoint: 5,
      fence: { toAxis: 54, standsOut: 6, bar: { from: 5, to: 22 } },
      frame: { kind: 'sticking', groove: { width: 6.4, depth: 11, setback: 7.5 } },
    });
    expect(backEdge).toMatchObject({
      side: 'back',
      cuttingPoint: 4,
      fence: { toAxis: 55, standsOut: 5, bar: null },
      frame: { kind: 'back edge', bearing: 55, corner: 60 },
    });
    for (const { speed, rim, feedRate, mark, power, passes } of [cope!, sticking!, backEdge]) {
      expect(rim).toBeCloseTo((Math.PI * 120 * speed) / 60_000, 9);
      expect(mark.pitch).toBeCloseTo((1000 * feedRate) / speed, 9);
      expect(power.likely).toBeCloseTo((40 * Math.max(...passes.map(({ area }) => area)) * feedRate) / 60, 6);
    }
    // What a rail's end loses in front of its tenon: the rectangle less the wood that fills the ovolo, a circle's segment under its step.
    expect(sticking!.passes[0]!.area + cope!.passes[0]!.area).toBeCloseTo(11 * 7.5, 6);
  });

  it('are said in words: the tenon’s shoulder, the groove, the corners that keep the cutter’s radius', () => {
    const words = said(framed());
    const of = (start: string) => words.find((step) => step.startsWith(start));
    expect(of('Run the cope on')).toContain('11 mm long and 8.1 mm deep');
    expect(of('Run the sticking')).toContain('6.4 mm wide, 11 mm deep and 7.5 mm below the front face');
    expect(of('Run the back edge')).toContain('on a bearing of 55 mm radius');
    expect(of('Run the back edge')).toContain('keep a radius of 60 mm');
    expect(words.filter((step) => step.includes('coped piece'))).toHaveLength(1);
  });

  it('use the knives that the shop keeps in that head with those profiles: seat and hand are then known', () => {
    const job = framed();
    const shop = job.shop!;
    const kept = {
      head: 'small',
      measured: 'wood',
      fromFace: 1.4,
      groundFor: { run: 'under', rotation: 'counterclockwise' },
    } as const;
    const knives = {
      ...shop.knives,
      // A rebate as deep and as far in would leave no counter-profile.
      square: { ...kept, profile: { ...OVOLO, shape: 'rebate', reach: 11, depth: 7.5, shoulder: 0 } as const },
      'ovolo-6': { ...kept, profile: OVOLO },
      // As read off a drawing: a hundredth off.
      'cope-6': { ...kept, profile: { ...copeProfile(job.frame)!, reach: 11.004 } },
      // Not the one: a mm deeper, or in another head.
      deeper: { ...kept, profile: { ...COVE, depth: 5 } },
      elsewhere: { ...kept, profile: COVE, head: 'raiser' },
    };
    const held = planned({ ...job, shop: { ...shop, knives } }).plan.setups;
    expect(held[0]).toMatchObject({ cut: 'cope', knife: 'cope-6', seat: 7.5 + 1.4 - 40, assumed: false });
    expect(held[1]).toMatchObject({ cut: 'sticking', knife: 'ovolo-6', seat: 5 + 1.4 - 40, assumed: false });
    expect(held[0]!.notChecked).not.toContain('shop.knives');
    expect(held.at(-1)).toMatchObject({ cut: 'back edge', knife: null, seat: null, assumed: true });
    const orders = answerKnives(prepareJob({ ...job, shop: { ...shop, knives } }))!.reports;
    expect(orders.filter(({ knife }) => knife === 'ovolo-6' || knife === 'cope-6')).toHaveLength(2);
  });

  it('have no cope where the parts are tenoned or mitred, or the lip is plain', () => {
    const cuts = (changes: Partial<Job['frame']>) => planned(framed(changes)).plan.setups.map(({ cut }) => cut);
    expect(cuts({ joint: { kind: 'mitre', length: 11 } })).toEqual(['sticking', 'raise', 'cove', 'back edge']);
    expect(cuts({ joint: { kind: 'tenon', length: 30 } })).toEqual(['sticking', 'raise', 'cove', 'back edge']);
    const { stickingHead: _, ...headless } = framed().frame;
    expect(planned({ ...framed(), frame: headless }).plan.setups.map(({ cut }) => cut)).toEqual([
      'raise',
      'cove',
      'back edge',
    ]);
  });

  it('keep a cut of the job with the name of one of theirs apart', () => {
    const base = framed();
    const job = { ...base, cuts: base.cuts.map((cut, k) => (k === 1 ? { ...cut, name: 'cope' } : cut)) };
    const { setups } = planned(job).plan;
    expect(setups.filter(({ cut }) => cut === 'cope').map(({ of }) => of)).toEqual(['frame', 'panel']);
  });
});

describe('what stands against a cut on the frame', () => {
  const against = (job: Job, cut: string) => planned(job).plan.ways.filter((way) => way.cut === cut && way.works);

  it('a fence that opens too little stands against the cope, and not against an edge that is run on a bearing', () => {
    // The cope needs 75.3 mm, the back's arris on a fence would need 54.
    const machines =
      '{ main: { speeds: [6000], seat: [-70, 90], opening: 220, nutDiameter: 48, feeds: [6], fenceGap: 50 } }';
    const job = framed({}, shopJob({ machines }));
    expect(against(job, 'cope')).toEqual([]);
    expect(against(job, 'back edge').length).toBeGreaterThan(0);
    const { setups } = planned(job).plan;
    expect(setups.find(({ cut }) => cut === 'back edge')!.notChecked).not.toContain('machines.main.fenceGap');
    const { problems } = planned(job);
    expect(problems.filter(({ about }) => about?.cut === 'cope').map(({ code }) => code)).toEqual(['cannot-be-run']);
  });

  it('a tool for mechanical feed stands against what only goes past it by hand', () => {
    const job = framed({}, shopJob({ small: ', feed: mechanical' }));
    const codes = (cut: string) => planned(job).plan.ways.find((way) => way.cut === cut)!.against;
    expect([codes('cope'), codes('sticking'), codes('back edge')]).toEqual([['needs-feeder'], [], ['needs-feeder']]);
    const { setups } = planned(framed()).plan;
    expect(setups.map(({ feedBy }) => feedBy)).toEqual(['hand', 'feeder', 'feeder', 'feeder', 'hand']);
  });

  it('an opening that the head does not go into stands against the back edge alone', () => {
    const doors = (rail: number) =>
      `[{ name: front, width: 500, height: 250, stile: 60, rail: ${rail}, grain: across }]`;
    // Two rails of 65 leave 120 mm: the circle of 120 and 3 mm each side need 126.
    const job = framed({}, shopJob({ doors: doors(65) }));
    const ways = planned(job).plan.ways.filter(({ cut }) => cut === 'back edge');
    expect(ways.every(({ against: codes }) => codes.includes('opening-too-small'))).toBe(true);
    expect(ways[0]!.problems.find(({ code }) => code === 'opening-too-small')!.message).toContain('126 mm');
    expect(against(framed({}, shopJob({ doors: doors(62) })), 'back edge').length).toBeGreaterThan(0);
    expect(against(job, 'sticking').length).toBeGreaterThan(0);
  });
});
