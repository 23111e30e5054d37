// What every shop knows about running panels (common practice, no published source): which face lies on the table decides
// whether the tongue follows the stock, and what thickness of panel lies flush in which frame.
import { type Cut, evaluate, type Job } from '@fielded/core';
import { describe, expect, it } from 'vitest';

const INCH = 25.4;

function cut(side: Cut['side'], run: Cut['run'], depth: number): Cut {
  const profile = { shape: 'rebate', reach: 30, depth, land: 0, shoulder: 0, balance: 0.5 } as const;
  return { name: side, side, profile, depth, reach: 30, run, tilt: 0 };
}

function panelJob(cuts: readonly Cut[], thickness: number, measured = thickness): Job {
  return {
    title: 'practice',
    units: 'mm',
    panel: { thickness, measured, sawn: 'flat' },
    frame: { thickness: 24, groove: { width: 7, depth: 11, setback: 8 }, swellGap: 2 },
    cuts,
    fit: { target: 0.2, snug: 0.05, loose: 0.5 },
    doors: [],
  };
}

describe('over and under', () => {
  const thin = 19.7;
  const thick = 20.4;

  it.each([
    {
      front: 'under',
      back: 'under',
      follows: 1,
      why: 'each face is its own datum, so the tongue takes up the whole difference',
    },
    {
      front: 'under',
      back: 'over',
      follows: 0,
      why: 'the panel lies face down for both, so the tongue is the same whatever the planer left',
    },
    { front: 'over', back: 'under', follows: 0, why: 'the panel lies face up for both' },
    {
      front: 'over',
      back: 'over',
      follows: -1,
      why: 'each face is cut from the other, so the tongue loses what the stock gains',
    },
  ] as const)('front $front, back $back: $why', ({ front, back, follows }) => {
    const tongueOn = (measured: number) =>
      evaluate(panelJob([cut('front', front, 8), cut('back', back, 5.2)], 20, measured)).tongue.grooveNeeded!;
    expect(tongueOn(thick) - tongueOn(thin)).toBeCloseTo(follows * (thick - thin), 10);
    expect(tongueOn(20)).toBeCloseTo(6.8, 10);
  });

  it('run over on both faces, the tongue is even but the depth of the raise follows the stock', () => {
    const job = panelJob([cut('front', 'over', 8), cut('back', 'under', 5.2)], 20, thick);
    expect(evaluate(job).section.cuts[0]!.depthCut).toBeCloseTo(8.4, 12);
  });
});

describe('3/4 in frame, 1/4 in groove in the middle of it', () => {
  const frame = {
    thickness: 0.75 * INCH,
    groove: { width: 0.25 * INCH, depth: 0.375 * INCH, setback: 0.25 * INCH },
    swellGap: INCH / 16,
  };
  /** The raise takes what leaves a 1/4 in tongue with the back untouched, hard against the back wall. */
  const facesOf = (thickness: number) =>
    evaluate({ ...panelJob([cut('front', 'under', thickness - 0.25 * INCH)], thickness), frame }).fit;

  it('a 3/4 in panel stands proud by the thickness of the back lip', () => {
    expect(facesOf(0.75 * INCH).frontFace!.most).toBeCloseTo(0.25 * INCH, 10);
  });

  it('a panel as thick as front lip and tongue together lies flush', () => {
    expect(facesOf(0.5 * INCH).frontFace!.most).toBeCloseTo(0, 10);
  });

  it('a 5/8 in panel lies flush where the groove is set 3/8 in back', () => {
    const set = { ...frame, groove: { ...frame.groove, setback: 0.375 * INCH } };
    const job = { ...panelJob([cut('front', 'under', 0.375 * INCH)], 0.625 * INCH), frame: set };
    const fit = evaluate(job).fit;
    expect(fit.frontFace!.most).toBeCloseTo(0, 10);
    expect(fit.clearance).toBeCloseTo(0, 10);
    expect(fit.verdict).toBe('tight');
  });
});
