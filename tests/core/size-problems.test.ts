import { acceptJob, evaluate, type GivenJob } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { stateJoint } from '../../packages/core/src/report/statements.ts';

/** Invented: 20 mm stock, an ogee raise 38 in and 9 deep, a cove behind it 4.8 deep, in a 6.4 mm groove. */
function job(change: Partial<GivenJob> = {}): GivenJob {
  return {
    panel: { thickness: 20 },
    frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 },
    cuts: [
      { name: 'raise', side: 'front', profile: { shape: 'ogee', reach: 38, depth: 9, land: 11, shoulder: 1.5 } },
      { name: 'relief', side: 'back', profile: { shape: 'cove', reach: 14, depth: 4.8, land: 9 }, run: 'over' },
    ],
    ...change,
  };
}

const said = (given: GivenJob) => evaluate(given).problems.map(({ severity, code, at }) => `${severity} ${code} ${at}`);
const messageOf = (given: GivenJob, code: string) => evaluate(given).problems.find((p) => p.code === code)?.message;

describe('what passed in silence', () => {
  it('is nothing in a sound job', () => {
    expect(said(job())).toEqual([]);
    expect(said(job({ panel: { thickness: 20, width: 76.01 } }))).toEqual([]);
  });

  it('raises that meet: a panel as wide as two reaches, and a door whose panel is as high', () => {
    expect(said(job({ panel: { thickness: 20, width: 76 } }))).toEqual(['error raises-meet panel.width']);
    // Opening 760 − 2·60 wide, 178 − 120 = 58 high; with 9 of tongue at both edges the panel is 76 high.
    const door = { name: 'Drawer', width: 760, height: 178, stile: 60, rail: 60 };
    expect(said(job({ doors: [door] }))).toEqual(['error raises-meet doors[0]']);
    expect(said(job({ doors: [{ ...door, height: 178.1 }] }))).toEqual([]);
    expect(messageOf(job({ doors: [door] }), 'raises-meet')).toBe(
      'The raises meet: the panel of Drawer is 658 mm wide and 76 mm high, and two raises of 38 mm take 76 mm of it. No field is left. Give the raise another profile, with a reach of 28 mm.',
    );
  });

  it('a spindle that leans towards the panel: tilted, and over the stock', () => {
    // Bevels all round: a tilt takes nothing from them but what is drawn.
    const tilted = (run: 'under' | 'over', degrees: number) => {
      const profile = { shape: 'bevel', reach: 38, depth: 9, land: 11 } as const;
      const raise = { name: 'raise', side: 'front', profile, run, tilt: (degrees * Math.PI) / 180 } as const;
      return said(job({ cuts: [raise, job().cuts[1]!] })).filter((line) => line.includes('leans'));
    };
    expect(tilted('over', 45)).toEqual(['caution leans-over-panel cuts[0].run']);
    expect(tilted('over', 12)).toEqual(['caution leans-over-panel cuts[0].run']);
    for (const [run, degrees] of [
      ['over', 0],
      ['under', 45],
      ['under', 90],
    ] as const)
      expect(tilted(run, degrees)).toEqual([]);
  });

  it('a feather edge: a tip under 3 mm, or under what the shop says', () => {
    const thin: GivenJob = job({
      panel: { thickness: 16 },
      frame: { ...job().frame, groove: { width: 2.4, depth: 11, setback: 7.5 } },
    });
    expect(evaluate(thin).tongue.thicknessAtTip).toBeCloseTo(2.2, 9);
    expect(said(thin)).toEqual(['warning feather-edge cuts']);
    expect(messageOf(thin, 'feather-edge')).toContain('feather edge: its tip is 2.2 mm thick, and under 3 mm');
  });

  it('no lip, and a thin one, before and behind the groove', () => {
    const groove = (setback: number, thickness = 22) =>
      job({ frame: { thickness, groove: { width: 6.4, depth: 11, setback }, swellGap: 2 } });
    expect(said(groove(0))).toEqual(['error no-lip frame.groove']);
    expect(said(groove(2.9))).toEqual(['warning thin-lip frame.groove']);
    expect(said(groove(3))).toEqual([]);
    expect(said(groove(15.6))).toEqual(['error no-lip frame.groove']);
    expect(said(groove(12.7))).toEqual(['warning thin-lip frame.groove']);
    expect(messageOf(groove(12.7), 'thin-lip')).toContain('The back lip is 2.9 mm thin');
  });

  it('a cut that misses stock planed too thin for it', () => {
    const missed = job({ panel: { thickness: 20, measured: 15 } });
    expect(said(missed)).toContain('error cut-misses cuts[1].depth');
    expect(messageOf(missed, 'cut-misses')).toContain('The relief misses the stock by 0.2 mm and takes nothing');
  });

  it('sizes that smell of another unit', () => {
    expect(said(job({ panel: { thickness: 0.75 } }))).toContain('warning another-unit panel.thickness');
    expect(messageOf(job({ panel: { thickness: 508 } }), 'another-unit')).toBe(
      'The stock is 508 mm thick, as stock hardly ever is: was it meant in another unit? Write inches as 3/4 in, or units: in at the top of the file.',
    );
    const inches = job({ units: 'in', panel: { thickness: 19 * 25.4 } });
    expect(messageOf(inches, 'another-unit')).toContain('Write millimetres as 19 mm, or units: mm');
  });
});

describe('the two statements', () => {
  it('do not call a job right that cannot be made, though its tongue slides', () => {
    const { statements, fit } = evaluate(job({ panel: { thickness: 20, width: 60 } }));
    expect(fit.verdict).toBe('sliding');
    expect(statements).toMatchObject({ fits: true, canBeRun: false, against: ['raises-meet'] });
  });

  it('of a joint alone leave open what needs a head, and nothing else', () => {
    const { cuts } = acceptJob(job());
    const named = { ...acceptJob(job()), cuts: [{ ...cuts[0]!, head: 'raiser' }, cuts[1]!] };
    // No head, knife or machine has been looked at in a drag: cuts without a head are asked for where all is evaluated.
    expect(stateJoint(named, 'sliding', []).notChecked).toEqual(['cuts[1].head', 'cuts[0].head']);
    expect(stateJoint(named, 'sliding', []).canBeRun).toBeNull();
  });

  it('say what nobody could check', () => {
    expect(evaluate(job()).statements).toEqual({
      fits: true,
      canBeRun: null,
      against: [],
      errors: 0,
      notChecked: ['cuts[0].head', 'cuts[1].head'],
    });
  });
});
