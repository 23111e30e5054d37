import {
  answerKnives,
  evaluate,
  type Head,
  type Job,
  type KnifeReport,
  type NamedProfile,
  prepareJob,
  readJob,
} from '@fielded/core';
import { readReportPath } from '@fielded/geometry';
import { describe, expect, it } from 'vitest';
import { DEGREE, raiser, rules } from '../support/heads.ts';

const bevel: NamedProfile = { shape: 'bevel', reach: 38, depth: 9, land: 11, shoulder: 1.5, balance: 0.5 };

interface Set {
  readonly profile?: NamedProfile;
  readonly depth?: number;
  readonly reach?: number;
  readonly run?: 'under' | 'over';
  readonly tilt?: number;
  readonly measured?: number;
  readonly head?: Partial<Head>;
}

/** The knife of one cut at a setting. */
function knifeAt({ profile = bevel, tilt = 0, run = 'under', measured = 24, head = {}, ...set }: Set): KnifeReport {
  const cut = { name: 'raise', side: 'front' as const, profile, depth: profile.depth, reach: profile.reach, run, tilt };
  const job: Job = {
    title: 'One cut',
    units: 'mm',
    panel: { thickness: 24, measured, sawn: 'flat' },
    frame: { thickness: 24, groove: { width: 6, depth: 11, setback: 7 }, swellGap: 2 },
    cuts: [{ ...cut, ...set, head: 'raiser' }],
    fit: { target: 0.2, snug: 0.05, loose: 0.5 },
    doors: [],
    shop: { units: 'mm', knives: {}, heads: { raiser: { ...raiser, ...head } }, machines: {}, rules },
  };
  return answerKnives(prepareJob(job))!.reports[0]!;
}

/** Least and greatest s and t of an outline's ends. */
function extent(outline: string) {
  const curves = readReportPath(outline).flat();
  const xs = curves.flatMap((c) => [c.x0, c.x1]);
  const ys = curves.flatMap((c) => [c.y0, c.y1]);
  return { s0: Math.min(...xs), s1: Math.max(...xs), t0: Math.min(...ys), t1: Math.max(...ys) };
}

describe('steel for the setting', () => {
  it('a cut set 10 deep with a profile 9 deep needs 10 mm of steel, and 1 mm past the face: no lip is left', () => {
    const knife = knifeAt({ depth: 10 });
    expect(knife.wood.width).toBe(10);
    expect(knife.width).toBeCloseTo(11, 9);
    expect(knife.tipAt).toBe(2.5);
    const { s0, s1 } = extent(knife.outline);
    // The tip is the shoulder's foot, 2.5 below the face as set; the flat lies 10 below it.
    expect([s0, s1]).toEqual([-3.5, 7.5]);
  });

  it('a cut set to reach further takes the length for it, to the edge of the panel; the overrun lies beyond', () => {
    const knife = knifeAt({ reach: 41, head: { rake: 0 } });
    expect(knife).toMatchObject({ length: 41, leastRadius: 39, overrun: { edge: 1, face: 1 } });
    expect(extent(knife.outline)).toMatchObject({ t0: 0, t1: 42 });
  });

  it('a cut set shallower or shorter ends at edge and face in the wood, and keeps its steel', () => {
    const knife = knifeAt({ depth: 8, reach: 36, head: { rake: 0 } });
    expect(knife.wood).toMatchObject({ length: 36, width: 8 });
    expect(knife).toMatchObject({ length: 36, leastRadius: 44, tipAt: 0.5 });
    expect(extent(knife.outline)).toMatchObject({ s0: -1.5, t1: 38 });
  });

  it('run over on stock that measures 0.6 thick, it clears 0.6 more above the tip', () => {
    const [planned, thick, under] = [
      knifeAt({ run: 'over' }),
      knifeAt({ run: 'over', measured: 24.6 }),
      knifeAt({ run: 'under', measured: 24.6 }),
    ];
    expect(extent(thick.outline).s0).toBeCloseTo(extent(planned.outline).s0 - 0.6, 9);
    expect(thick.wood.width).toBeCloseTo(9.6, 9);
    expect(under.outline).toBe(knifeAt({}).outline);
  });

  it('on edge the overrun goes past the edge along the spindle and past the face along the knife', () => {
    const knife = knifeAt({ tilt: Math.PI / 2, depth: 10, reach: 40, head: { rake: 0 } });
    expect(knife).toMatchObject({ length: 10, leastRadius: 70 });
    expect(knife.width).toBeCloseTo(41, 9);
    const { s0, s1, t1 } = extent(knife.outline);
    expect(s1 - s0).toBeCloseTo(41, 9);
    expect(t1).toBeCloseTo(11, 9);
  });
});

describe('the limiter', () => {
  it('clears the wood sideways too: beside the flat it ends 0.2 mm before the wall', () => {
    const { limiter, outline } = knifeAt({ head: { rake: 0 } });
    expect(extent(limiter!.outline).s1).toBeCloseTo(extent(outline).s1 - 0.2, 9);
    expect(limiter!.gap).toMatchObject({ least: expect.closeTo(1.1, 9), most: expect.closeTo(1.1, 9), side: 0.2 });
  });

  it('has sizes of its own', () => {
    const { limiter, width } = knifeAt({ head: { rake: 0 } });
    // From 1.1 behind the tip to 1.1 behind the end of the overrun: 39 long; 0.2 less at both ends.
    expect(limiter!.length).toBeCloseTo(39, 9);
    expect(limiter!.width).toBeCloseTo(width - 0.4, 9);
    expect(limiter!.ordinates[0]!.t).toBeCloseTo(1.1, 9);
  });
});

describe('shear', () => {
  it('turns with the hand: a knife of the other hand leads where this one trails', () => {
    const shear = 12 * DEGREE;
    const under = knifeAt({ head: { shear } });
    const over = knifeAt({ head: { shear }, run: 'over' });
    expect(under.shear).toBeCloseTo(12, 9);
    expect(over.shear).toBeCloseTo(-12, 9);
    expect(over.outline).toBe(knifeAt({ head: { shear: -shear } }).outline);
  });

  it('stays with a head that is turned over: under counterclockwise and over clockwise are one knife', () => {
    const knives = (run: string, rotation: string) => `fielded: 1
units: mm
heads: { raiser: { cuttingDiameter: 160, bodyDiameter: 70, height: 40, rake: 18, shear: 12, maxSpeed: 8000 } }
knives: { bevel: { shape: bevel, reach: 38, depth: 9, land: 11, head: raiser, groundFor: { run: ${run}, rotation: ${rotation} } } }`;
    const outlineOf = (run: string, rotation: string) => {
      const { job } = readJob(JOB, { shop: { text: knives(run, rotation), name: 'shop.yaml' } });
      const knife = evaluate(job!).knives![0]!;
      expect(knife.assumed).toBe(false);
      return knife.outline;
    };
    expect(outlineOf('over', 'clockwise')).toBe(outlineOf('under', 'counterclockwise'));
    expect(outlineOf('over', 'counterclockwise')).toBe(outlineOf('under', 'clockwise'));
    expect(outlineOf('over', 'counterclockwise')).not.toBe(outlineOf('under', 'counterclockwise'));
  });
});

const JOB = `fielded: 1
panel: { thickness: 20 }
frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 }
cuts: [ { name: raise, side: front, knife: bevel, depth: 10 } ]`;

describe('a knife of the shop', () => {
  const shop = (more: string) => `fielded: 1
heads: { raiser: { cuttingDiameter: 160, bodyDiameter: 70, height: 40, rake: 18, maxSpeed: 8000 } }
knives: { bevel: { shape: bevel, reach: 38, depth: 9, land: 11, head: raiser${more} } }`;
  const evaluateWith = (more: string) => {
    const { job, faults } = readJob(JOB, { shop: { text: shop(more), name: 'shop.yaml' } });
    expect(faults).toEqual([]);
    return evaluate(job!);
  };

  it('that nobody gave a hand has it assumed, and says so', () => {
    expect(evaluateWith('').knives![0]).toMatchObject({
      assumed: true,
      groundFor: { run: 'under', rotation: 'counterclockwise' },
    });
  });

  it('set deeper than it was measured is asked to run on, or it leaves a lip', () => {
    const { problems } = evaluateWith('');
    expect(problems.find((p) => p.code === 'may-leave-lip')).toMatchObject({
      severity: 'caution',
      figures: { lip: 1, knife: 'bevel' },
    });
  });

  it('measured off its steel, leaves a lip where it ends', () => {
    const { problems } = evaluateWith(', measured: knife');
    const lips = problems.filter((p) => p.code === 'steel-leaves-lip');
    expect(lips.map((p) => p.sentence)).toEqual(['steel-leaves-lip.edge', 'steel-leaves-lip.face']);
    expect(lips[1]!.figures!.lip).toBeCloseTo(1, 9);
  });

  it('with side relief ground carries the relief it has beside the least it needs', () => {
    expect(evaluateWith('').knives![0]!.sideRelief).toMatchObject({ least: expect.closeTo(3, 9), ground: null });
    expect(evaluateWith(', sideRelief: 5').knives![0]!.sideRelief!.ground).toBeCloseTo(5, 9);
  });
});
