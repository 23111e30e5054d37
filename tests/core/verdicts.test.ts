import { type Cut, evaluate, type Job, type NamedProfile } from '@fielded/core';
import type { Curve } from '@fielded/geometry';
import { describe, expect, it } from 'vitest';

function profile(given: Partial<NamedProfile> & Pick<NamedProfile, 'shape' | 'reach' | 'depth'>): NamedProfile {
  return { land: 0, shoulder: 0, balance: 0.5, ...given };
}

function cutOf(side: Cut['side'], p: NamedProfile, set: Partial<Cut> = {}): Cut {
  return {
    name: side === 'front' ? 'raise' : 'back relief',
    side,
    profile: p,
    depth: p.depth,
    reach: p.reach,
    run: 'under',
    tilt: 0,
    ...set,
  };
}

/** 20 mm stock, raise 9 deep with a 20 mm land, back rebate; groove 6.4 × 11, 2 mm gap: the tongue is 11 − backDepth thick. */
function job(backDepth: number, change: Partial<Job> = {}): Job {
  return {
    title: 'verdicts',
    units: 'mm',
    panel: { thickness: 20, measured: 20, sawn: 'flat' },
    frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 },
    cuts: [
      cutOf('front', profile({ shape: 'bevel', reach: 38, depth: 9, land: 20 })),
      cutOf('back', profile({ shape: 'rebate', reach: 14, depth: backDepth })),
    ],
    fit: { target: 0.2, snug: 0.05, loose: 0.5 },
    doors: [],
    ...change,
  };
}

describe('the verdict', () => {
  it.each([
    { back: 4.5, verdict: 'will-not-enter', clearance: -0.1 },
    { back: 4.6, verdict: 'tight', clearance: 0 },
    { back: 4.64, verdict: 'tight', clearance: 0.04 },
    { back: 4.65, verdict: 'sliding', clearance: 0.05 },
    { back: 5.1, verdict: 'sliding', clearance: 0.5 },
    { back: 5.11, verdict: 'loose', clearance: 0.51 },
  ])('with the back $back deep is $verdict', ({ back, verdict, clearance }) => {
    const { fit } = evaluate(job(back));
    expect(fit.verdict).toBe(verdict);
    expect(fit.clearance).toBeCloseTo(clearance, 10);
  });

  it('will not enter: no gap and no faces to speak of, and 0 as the depth it goes', () => {
    const { fit } = evaluate(job(4.5));
    expect(fit).toMatchObject({ deepestInsertion: 0, bottomGap: null, frontFace: null, backFace: null });
  });

  it('stops short where the back rebate ends inside the groove', () => {
    const short = job(4.8);
    const cuts = [short.cuts[0]!, cutOf('back', profile({ shape: 'rebate', reach: 5, depth: 4.8 }))];
    const { fit } = evaluate({ ...short, cuts });
    expect(fit).toMatchObject({ verdict: 'stops-short', deepestInsertion: 5, bottomGap: 6 });
  });

  it('goes home against a shoulder that stands exactly at the insertion', () => {
    const cuts = [job(4.8).cuts[0]!, cutOf('back', profile({ shape: 'rebate', reach: 9, depth: 4.8 }))];
    expect(evaluate({ ...job(4.8), cuts }).fit).toMatchObject({
      verdict: 'sliding',
      deepestInsertion: 9,
      bottomGap: 2,
    });
  });
});

describe('what is said to do', () => {
  const messages = (j: Job) => evaluate(j).problems.map(({ severity, message }) => `${severity}: ${message}`);

  it('will not enter', () => {
    expect(messages(job(4.5))).toEqual([
      'error: The tongue will not enter: it needs a groove 0.1 mm wider. Take the back relief 0.3 mm deeper.',
    ]);
  });

  it('tight', () => {
    expect(messages(job(4.63))).toEqual([
      'warning: The tongue is tight: it goes in with 0.03 mm to spare and needs 0.05 mm to slide. Take the back relief 0.17 mm deeper.',
    ]);
  });

  it('loose', () => {
    expect(messages(job(5.4))).toEqual([
      'warning: The tongue is loose: it has 0.8 mm to spare, more than 0.5 mm, and the panel will rattle. Take the back relief 0.6 mm shallower.',
    ]);
  });

  it('a wedge that stops short is offered a land', () => {
    const wedge = job(0, { cuts: [cutOf('front', profile({ shape: 'bevel', reach: 45, depth: 13.8 }))] });
    expect(messages(wedge)).toEqual([
      "error: The tongue goes in only 0.65 mm, 8.35 mm short: it wedges in the groove's mouth. Take the raise 2.76 mm deeper. Or: Give the raise a land of 10 mm.",
    ]);
  });

  it('a cut that ends before the frame is offered reach, and depth with it where that takes both', () => {
    const short = job(4.8, {
      cuts: [job(4.8).cuts[0]!, cutOf('back', profile({ shape: 'rebate', reach: 8, depth: 4.8 }))],
    });
    expect(messages(short)).toEqual([
      'error: The tongue goes in only 8 mm: the back relief ends 1 mm before the frame. Give the back relief a reach of 10 mm.',
    ]);
    const thick = job(4.3, {
      cuts: [job(4.3).cuts[0]!, cutOf('back', profile({ shape: 'rebate', reach: 8, depth: 4.3 }))],
    });
    expect(messages(thick)).toEqual([
      'error: The tongue will not enter: it needs a groove 4.6 mm wider. Give the back relief a reach of 10 mm, and take it 0.5 mm deeper.',
    ]);
  });

  it('cuts that meet leave no tongue, and say from where to where', () => {
    const { problems, tongue, fit } = evaluate(job(12));
    expect(problems.map((p) => p.message)).toEqual([
      'The cuts meet: they leave no wood within 14 mm of the edge. Take the back relief 7.2 mm shallower.',
    ]);
    expect(tongue).toEqual({
      insertion: 9,
      thicknessAtTip: null,
      thicknessAtMouth: null,
      thinnest: null,
      thickest: null,
      grooveNeeded: null,
    });
    expect(fit.verdict).toBeNull();
  });

  it('cuts that meet exactly, face to face, leave no tongue either', () => {
    expect(evaluate(job(11)).problems.map((p) => p.code)).toEqual(['no-tongue']);
  });

  it('a profile that cannot be run flat is sent on edge when that keeps it, and back to the drawing board when it does not', () => {
    const line = (x0: number, y0: number, x1: number, y1: number) =>
      ({ x0, y0, x1, y1, cx: 0, cy: 0, r: 0, turn: 0 }) as const;
    const flat = (chain: readonly Curve[]) => {
      const outline = { shape: 'outline', reach: 30, depth: 9, chain } as const;
      const cut = {
        name: 'raise',
        side: 'front',
        profile: outline,
        depth: 9,
        reach: 30,
        run: 'under',
        tilt: 0,
      } as const;
      return messages(job(4.8, { cuts: [cut, job(4.8).cuts[1]!] }));
    };
    // A square bead 4 mm wide and 3 mm high, then one that leans out over a quirk on either side.
    const square = [
      line(0, 9, 14, 9),
      line(14, 9, 14, 6),
      line(14, 6, 18, 6),
      line(18, 6, 18, 9),
      line(18, 9, 30, 9),
      line(30, 9, 30, 0),
    ];
    const leaning = [
      line(0, 9, 14, 9),
      line(14, 9, 13, 6),
      line(13, 6, 19, 6),
      line(19, 6, 18, 9),
      line(18, 9, 30, 9),
      line(30, 9, 30, 0),
    ];
    expect(flat(square)).toEqual([
      'error: The raise cannot be cut as drawn with the panel flat: the turning knife also takes 12 mm² that the drawing keeps, 14 mm to 18 mm from the edge and 6 mm to 9 mm below the face. Run it on edge: that way nothing is lost.',
    ]);
    expect(flat(leaning)).toEqual([
      'error: The raise cannot be cut as drawn with the panel flat: the turning knife also takes 15 mm² that the drawing keeps, 13 mm to 19 mm from the edge and 6 mm to 9 mm below the face. Change the profile: neither flat nor on edge does a knife leave it so.',
    ]);
  });

  it('a gap of nothing at the bottom of the groove', () => {
    const tight = job(4.8, { frame: { ...job(4.8).frame, swellGap: 0 } });
    expect(messages(tight)).toEqual([
      'warning: No gap is left at the bottom of the groove: a panel that swells in damp air has nowhere to go and can burst the frame. Leave a swell gap of 2 mm.',
    ]);
  });

  it('sticking that breaks into the groove', () => {
    const frame = { ...job(4.8).frame, sticking: profile({ shape: 'ovolo', reach: 9, depth: 8 }) };
    expect(messages(job(4.8, { frame }))).toEqual([
      "error: The sticking is 8 mm deep and breaks into the groove, which starts 7.5 mm below the frame's face. Set the groove 9 mm back from the front face. Or: Make the sticking 6.5 mm deep.",
    ]);
  });

  it('a raise that ends inside the groove', () => {
    const cuts = [cutOf('front', profile({ shape: 'rebate', reach: 9, depth: 9 })), job(4.8).cuts[1]!];
    expect(messages(job(4.8, { cuts }))).toEqual([
      'warning: The fielding ends inside the groove: none of it will show. Give the raise a reach of 29 mm.',
    ]);
  });
});
