import { answerKnives, evaluate, evaluateJoint, prepareJob, readJob } from '@fielded/core';
import { describe, expect, it } from 'vitest';
import { copeProfile, widestGap } from '../../packages/core/src/joint/cope.ts';
import { arcAngle, pointAlong } from '../../packages/geometry/src/curve/along.ts';

const SHOP = `fielded: 1
heads: { small: { cuttingDiameter: 120, bodyDiameter: 60, height: 40, rake: 15, maxSpeed: 9000 } }`;

function jobWith(sticking: string, more = '') {
  return readJob(
    `fielded: 1
panel: { thickness: 20 }
frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2, sticking: ${sticking}${more} }
cuts: [ { name: raise, side: front, profile: { shape: bevel, reach: 38, depth: 9, land: 11 } } ]`,
    { shop: { text: SHOP, name: 'shop.yaml' } },
  );
}

const OVOLO = '{ shape: ovolo, reach: 9, depth: 6, shoulder: 1, head: small }';

describe('the cope of a frame', () => {
  it('closes on a bevelled sticking: at every depth rail and stile make up the tenon’s length', () => {
    const { job, faults } = jobWith('{ shape: bevel, reach: 8, depth: 5, head: small }');
    expect(faults).toEqual([]);
    const profile = copeProfile(job!.frame)!;
    expect(profile).toMatchObject({ reach: 11, depth: 7.5 });
    for (const c of profile.chain)
      for (let i = 0; i <= 10; i++) {
        const { x, y } = pointAlong(c, i / 10, arcAngle(c));
        if (y > 7.5 - 1e-9) continue;
        // A bevel from 8 in at the face to nothing 5 down.
        expect(x).toBeCloseTo(11 - Math.max(0, (8 * (5 - y)) / 5), 9);
      }
  });

  it('of another bevel gapes: 2 mm narrower, by 2 mm less for each part of the depth', () => {
    // At b below the face the sticking is cut in by 8·(5 − b)/5 and the rail stands back as for 6·(5 − b)/5; 17ths of the depth are looked at.
    const [wide, narrow] = [8, 6].map(
      (reach) => jobWith(`{ shape: bevel, reach: ${reach}, depth: 5, head: small }`).job!,
    );
    expect(widestGap(copeProfile(narrow!.frame)!, wide!.frame.sticking!)).toBeCloseTo(2 * (16 / 17), 9);
    expect(widestGap(copeProfile(wide!.frame)!, narrow!.frame.sticking!)).toBe(0);
  });

  it('closes on an ovolo: its own formula', () => {
    const profile = copeProfile(jobWith(OVOLO).job!.frame)!;
    const r = (9 * 9 + 5 * 5) / (2 * 5);
    for (const c of profile.chain.filter(({ turn }) => turn !== 0))
      for (let i = 0; i <= 20; i++) {
        const { x, y } = pointAlong(c, i / 20, arcAngle(c));
        const back = 9 - (11 - x);
        expect(y).toBeCloseTo(1 + r - Math.sqrt(r * r - back * back), 9);
      }
    expect(profile.chain.some(({ turn }) => turn !== 0)).toBe(true);
  });

  it('is reported with its tenon and without a gap, and ordered like any knife', () => {
    const { job } = jobWith(OVOLO);
    const { cope } = evaluateJoint(job!).frame;
    expect(cope).toMatchObject({ tenon: { length: 11, thickness: 6.4 } });
    expect(cope!.gap).toBeLessThan(1e-9);
    const { reports } = answerKnives(prepareJob(job!), 'cope')!;
    expect(reports.map(({ cut, head, assumed }) => [cut, head, assumed])).toEqual([['cope', 'small', true]]);
    expect(reports[0]!.wood).toMatchObject({ length: 11, width: 7.5 });
    expect(reports[0]!.width).toBeCloseTo(8.5, 9);
  });

  it('needs a head that the shop describes, and a frame that is coped', () => {
    expect(jobWith(OVOLO.replace('small', 'smal')).faults.map(({ code, at }) => [code, at])).toEqual([
      ['unknown-head', 'frame.sticking.head'],
    ]);
    const mitred = jobWith(OVOLO, ', joint: { kind: mitre }');
    expect(answerKnives(prepareJob(mitred.job!), 'cope')).toBeUndefined();
    expect(evaluateJoint(mitred.job!).frame.cope).toBeUndefined();
    expect(answerKnives(prepareJob(jobWith(OVOLO.replace(', head: small', '')).job!))).toBeUndefined();
  });

  it('falls short where the sticking reaches further in than the rails go into the stiles', () => {
    const problemsOf = (length: number) =>
      evaluateJoint(jobWith(OVOLO, `, joint: { kind: cope, length: ${length} }`).job!).problems.map(({ code }) => code);
    expect(problemsOf(8.5)).toContain('cope-short');
    expect(problemsOf(9)).not.toContain('cope-short');
  });

  it('stays open where its stub tenon is longer than the groove is deep, which a tenon with a mortise is not', () => {
    const longOf = (joint: string) =>
      evaluate(jobWith(OVOLO, `, joint: { ${joint} }`).job!).problems.find(({ code }) => code === 'cope-long');
    expect(longOf('kind: cope, length: 11')).toBeUndefined();
    expect(longOf('kind: tenon, length: 30')).toBeUndefined();
    const long = longOf('kind: cope, length: 14')!;
    expect(long).toMatchObject({ severity: 'error', figures: { length: 14, depth: 11, over: 3 } });
    expect(long.advice!.map(({ writes }) => writes)).toEqual([
      [{ path: ['frame', 'joint', 'length'], mm: 11 }],
      [{ path: ['frame', 'joint', 'kind'], word: 'tenon' }],
    ]);
  });

  it('has a companion on the back: the profile of the inside arris is ordered too', () => {
    const { job, faults } = jobWith(OVOLO, ', backEdge: { shape: bevel, reach: 4, depth: 4, head: small }');
    expect(faults).toEqual([]);
    const { reports } = answerKnives(prepareJob(job!))!;
    expect(reports.map(({ cut }) => cut)).toEqual(['cope', 'sticking', 'back edge']);
    expect(reports[2]!.wood).toMatchObject({ length: 4, width: 4 });
  });
});
