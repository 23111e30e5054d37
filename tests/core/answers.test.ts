import {
  acceptJob,
  answerDoors,
  answerJoint,
  answerKnives,
  answerSeasons,
  answerSpread,
  edgeOutline,
  evaluate,
  evaluateJoint,
  type GivenJob,
  prepareJob,
  readJob,
} from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { checkProfile } from '../../packages/core/src/job/check-given-profile.ts';

const SHOP = `
fielded: 1
heads:
  small: { cuttingDiameter: 120, bodyDiameter: 70, height: 40, rake: 18, maxSpeed: 9000 }
machines:
  main: { speeds: [3000, 4500, 6000], seat: [-70, 90], opening: 220, nutDiameter: 48 }
`;

const TEXT = `
fielded: 1
title: Larder doors
shop: shop.yaml
panel: { thickness: 20, species: black cherry }
frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 }
cuts:
  - { name: raise, side: front, profile: { shape: ogee, reach: 30, depth: 9, land: 11, shoulder: 1.5 }, head: small }
  - { name: relief, side: back, profile: { shape: cove, reach: 14, depth: 4.8, land: 9 }, run: over, head: small }
spread: { thickness: 0.1 }
season: { made: 9, driest: 7, dampest: 12 }
doors: [{ width: 400, height: 700, stile: 60, rail: 60 }]
`;

const job = readJob(TEXT, { loadShop: () => SHOP }).job!;

describe('the answers of a prepared job', () => {
  it('are the parts of the one report', () => {
    const prepared = prepareJob(job);
    const report = evaluate(job);
    const { problems: _, statements: __, ...joint } = answerJoint(prepared);
    expect(report).toMatchObject(joint);
    expect(report.knives).toEqual(answerKnives(prepared)!.reports);
    expect(report.spread).toEqual(answerSpread(prepared).report);
    expect(report.season).toEqual(answerSeasons(prepared).report);
    const { problems: _doors, ...doors } = answerDoors(prepared)!;
    const { blanks, leftOver, timber } = report;
    expect({ doors: report.doors, blanks, leftOver, timber }).toEqual(doors);
    expect(report.knives).toHaveLength(2);
    expect([report.spread, report.season, report.doors]).not.toContain(undefined);
  });

  it('have the outline of the section that is cut by itself, whole and of each cut, on stock off its nominal size', () => {
    for (const measured of [20, 19.4, 20.3]) {
      const panel = { ...job.panel, measured };
      for (const cuts of [job.cuts, ...job.cuts.map((cut) => [cut])]) {
        const { section } = evaluateJoint({ ...job, panel, cuts });
        expect(edgeOutline(panel, cuts)).toBe(section.outline);
        expect(section.thickness).toBe(measured);
      }
    }
  });

  it('leave out of the joint alone what is no part of it', () => {
    expect(Object.keys(evaluateJoint(job))).toEqual(
      expect.not.arrayContaining(['knives', 'spread', 'season', 'doors']),
    );
    expect(evaluateJoint(job).fit).toEqual(evaluate(job).fit);
  });

  it('do not call a joint runnable whose heads were not looked at', () => {
    const { statements } = evaluateJoint(job);
    expect(statements).toMatchObject({ canBeRun: null, notChecked: ['cuts[0].head', 'cuts[1].head'] });
    expect(evaluate(job).statements.canBeRun).toBe(false);
  });

  it('give the one knife that is named', () => {
    expect(answerKnives(prepareJob(job), 'relief')!.reports.map(({ cut }) => cut)).toEqual(['relief']);
    expect(answerKnives(prepareJob(job), 'no such cut')).toBeUndefined();
  });
});

const BY_HAND: GivenJob = {
  panel: { thickness: 20 },
  frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 },
  cuts: [
    { side: 'front', profile: { shape: 'ogee', reach: 38, depth: 9, land: 11, shoulder: 1.5 } },
    { side: 'back', profile: { shape: 'cove', reach: 14, depth: 4.8, land: 9 }, run: 'over' },
  ],
};

describe('a job made by hand', () => {
  it('needs what a file needs, and comes to the same', () => {
    const text = `{ fielded: 1, panel: { thickness: 20 },
      frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 },
      cuts: [ { side: front, profile: { shape: ogee, reach: 38, depth: 9, land: 11, shoulder: 1.5 } },
              { side: back, profile: { shape: cove, reach: 14, depth: 4.8, land: 9 }, run: over } ] }`;
    const read = readJob(text);
    expect(read.faults).toEqual([]);
    expect(evaluate(BY_HAND)).toEqual(evaluate(read.job!));
    expect(acceptJob(BY_HAND)).toEqual(read.job);
  });

  it('takes a shop with as little in it as a shop file may have', () => {
    const read = readJob(
      '{ fielded: 1, shop: shop.yaml, panel: { thickness: 20 }, frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 }, cuts: [{ side: front, profile: { shape: bevel, reach: 30, depth: 8 } }] }',
      { loadShop: () => 'fielded: 1\n' },
    );
    expect(acceptJob({ ...BY_HAND, shop: {} }).shop).toEqual(read.job!.shop);
  });

  const frame = BY_HAND.frame;
  const [raise, relief] = BY_HAND.cuts as [GivenJob['cuts'][number], GivenJob['cuts'][number]];
  const { profile } = raise;
  it.each<[string, Partial<GivenJob>, string]>([
    ['no cuts', { cuts: [] }, 'cuts must hold at least one cut, got none'],
    ['NaN', { panel: { thickness: Number.NaN } }, 'panel.thickness must be above 0, got NaN'],
    ['a thickness of 0', { panel: { thickness: 0 } }, 'panel.thickness must be above 0, got 0'],
    [
      'a swell gap as deep as the groove',
      { frame: { ...frame, swellGap: 11 } },
      "frame.swellGap must be less than the groove's depth of 11, got 11",
    ],
    ['no groove', { frame: { ...frame, groove: undefined as never } }, 'frame.groove.width must be above 0'],
    [
      'a land past its reach',
      { cuts: [{ ...raise, profile: { ...profile, land: 40 } as never }] },
      'cuts[0].profile.land must be less than the reach of 38, got 40',
    ],
    [
      'a hollow past its quarter circle',
      { cuts: [raise, { ...relief, profile: { shape: 'cove', reach: 5, depth: 6 } }] },
      'cuts[1].profile: a cove cannot rise more than it runs (5), got a rise of 6',
    ],
    ['a side that is none', { cuts: [{ ...raise, side: 'top' as never }] }, 'cuts[0].side must be one of front, back'],
    ['degrees for radians', { cuts: [{ ...raise, tilt: 45 }] }, 'cuts[0].tilt must be 0 to π/2 radians, got 45'],
    ['a reach of NaN', { cuts: [{ ...raise, reach: Number.NaN }] }, 'cuts[0].reach must be above 0, got NaN'],
    [
      'an outline of nothing',
      { cuts: [{ ...raise, profile: { shape: 'outline', reach: 9, depth: 9, chain: [] } }] },
      'cuts[0].profile.chain must hold at least one line or arc, got none',
    ],
    ['a limit of NaN', { fit: { snug: Number.NaN } }, 'fit.snug must be a finite number, got NaN'],
    [
      'moisture of NaN',
      { season: { made: 9, driest: { temperature: 20, humidity: Number.NaN }, dampest: 12 } },
      'season.driest.humidity must be a finite number, got NaN',
    ],
    [
      'half a door',
      { doors: [{ width: 400, height: 700, stile: 60, rail: 60, across: 1.5 }] },
      'doors[0].across must be a whole number above 0, got 1.5',
    ],
    [
      'a groove deeper than the frame',
      { frame: { ...frame, groove: { ...frame.groove, depth: 30 } } },
      "frame.groove.depth must be at most the frame's thickness of 22, got 30",
    ],
    [
      'a groove behind the frame',
      { frame: { ...frame, groove: { ...frame.groove, setback: 20 } } },
      'frame.groove must lie inside a frame 22 thick, got setback and width of 26.4',
    ],
    ['a door without sizes', { doors: [{} as never] }, 'doors[0].width must be above 0, got undefined'],
    [
      'a cut without a profile',
      { cuts: [{ side: 'front' } as never] },
      'cuts[0].profile must be an object, got undefined',
    ],
    ['cuts that are no list', { cuts: 'raise' as never }, 'cuts must be a list, got "raise"'],
    ['seasons without figures', { season: {} as never }, 'season.made must be an object, got undefined'],
    [
      'half a head',
      { shop: { heads: { a: {} as never } } },
      'shop.heads.a.cuttingDiameter must be above 0, got undefined',
    ],
    [
      'half a machine',
      { shop: { machines: { m: {} as never } } },
      'shop.machines.m.opening must be above 0, got undefined',
    ],
    [
      'a wood that is no name',
      { panel: { thickness: 20, species: 5 as never } },
      'panel.species must be a text, got 5',
    ],
    [
      'an arris without a profile',
      { frame: { ...frame, backEdge: {} as never } },
      'frame.backEdge.profile.shape must be',
    ],
    ['a unit that is none', { units: 'cm' as never }, 'units must be one of mm, in, got "cm"'],
  ])('with %s is refused, with the value', (_, change, message) => {
    const call = () => evaluate({ ...BY_HAND, ...change });
    expect(call).toThrow(RangeError);
    expect(call).toThrow(message);
  });
});

it('a hollow may rise as far as it runs, however that is rounded, and no further', () => {
  for (let land = 0.1; land < 12; land += 0.37)
    for (const shoulder of [0, 0.3, 1.1]) {
      const run = 7.3;
      const cove = (rise: number) =>
        ({ shape: 'cove', reach: land + run, depth: shoulder + rise, land, shoulder, balance: 0.5 }) as const;
      expect(() => checkProfile('cut', cove(run))).not.toThrow();
      expect(() => checkProfile('cut', cove(run + 1e-6))).toThrow('cannot rise more than it runs');
    }
});
