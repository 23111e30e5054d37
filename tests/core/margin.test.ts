// The margin that shows, where settings and stock differ from what the profile was drawn for.
import { evaluate, type GivenJob } from '@fielded/core';
import { arcAngle, type Chain, pointAlong } from '@fielded/geometry';
import { describe, expect, it } from 'vitest';
import { depthTaken } from '../../packages/core/src/machining/datum.ts';
import { faceEnd } from '../../packages/core/src/machining/face-end.ts';
import { sweepCut } from '../../packages/core/src/machining/sweep.ts';
import { Random } from '../support/random.ts';
import { randomJob } from '../support/random-job.ts';
import { trials } from '../support/trials.ts';

const FRAME = { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 };

function marginOf(job: Omit<GivenJob, 'frame'>): number | null {
  return evaluate({ frame: FRAME, ...job }).fit.visibleMargin;
}

describe('the margin', () => {
  it('of an ovolo set half a millimetre shallow is 22.3 mm, not the 29 of its drawing', () => {
    const profile = { shape: 'ovolo', reach: 38, depth: 9, land: 11 } as const;
    const relief = { side: 'back', profile: { shape: 'cove', reach: 14, depth: 4.8, land: 9 } } as const;
    const cuts = (depth: number) => [{ side: 'front', profile, depth } as const, relief];
    expect(marginOf({ panel: { thickness: 20 }, cuts: cuts(9) })).toBeCloseTo(29, 9);
    // By hand: the round has S = (27² + 9²)/18 = 45 about (38, −36 + 0.5 up); it meets the face √(45² − 44.5²) before 38.
    const margin = marginOf({ panel: { thickness: 20 }, cuts: cuts(8.5) })!;
    expect(margin).toBeCloseTo(29 - Math.sqrt(45 ** 2 - 44.5 ** 2), 9);
    expect(margin).toBeCloseTo(22.3, 1);
  });

  it('of a bevel run over stock half a millimetre thin is 27.5 mm', () => {
    const cuts = [
      { side: 'front', run: 'over', profile: { shape: 'bevel', reach: 38, depth: 9, land: 11 } },
      { side: 'back', run: 'under', profile: { shape: 'cove', reach: 14, depth: 4.8, land: 9 } },
    ] as const;
    // By hand: the bevel rises 9 in 27, so that half a millimetre is 1.5 of its run.
    expect(marginOf({ panel: { thickness: 20, measured: 19.5 }, cuts })).toBeCloseTo(27.5, 9);
  });

  it('is seen from where a tongue that stops short really stands', () => {
    const cuts = [{ side: 'front', profile: { shape: 'bevel', reach: 40, depth: 14.9 } }] as const;
    const { fit } = evaluate({ panel: { thickness: 20 }, frame: FRAME, cuts });
    expect(fit.verdict).toBe('stops-short');
    expect(fit.visibleMargin).toBeCloseTo(40 - fit.deepestInsertion!, 9);
  });
});

/** The greatest x of a chain below the face: sampled, and bisected between a point below and its neighbour that is not. */
function lastBelow(swept: Chain): number {
  let last = Number.NEGATIVE_INFINITY;
  for (const c of swept) {
    const angle = arcAngle(c);
    const below = (at: number) => pointAlong(c, at, angle).y > 0;
    let [here, next] = [false, below(0)];
    for (let k = 0; k <= 400; k++) {
      [here, next] = [next, k < 400 && below((k + 1) / 400)];
      if (here) last = Math.max(last, pointAlong(c, k / 400, angle).x);
      if (k === 400 || here === next) continue;
      let [inside, outside] = here ? [k / 400, (k + 1) / 400] : [(k + 1) / 400, k / 400];
      for (let n = 0; n < 60; n++) {
        const middle = (inside + outside) / 2;
        if (below(middle)) inside = middle;
        else outside = middle;
      }
      last = Math.max(last, pointAlong(c, inside, angle).x);
    }
  }
  return last;
}

describe('where a sweep leaves the face', () => {
  it('is the last point along it that lies below the face, for random cuts at random settings', () => {
    const random = new Random(41);
    let shallow = 0;
    for (let i = 0; i < trials(400, 1500); i++) {
      const job = randomJob(i);
      const measured = job.panel.thickness + random.between(-1.5, 1.5);
      for (const cut of job.cuts) {
        const set = { ...cut, depth: cut.depth + random.between(-2, 2), reach: cut.reach + random.between(-3, 3) };
        if (set.depth <= 0 || set.reach <= 0) continue;
        const { swept } = sweepCut(set, depthTaken(set, { thickness: job.panel.thickness, measured }));
        const last = lastBelow(swept);
        const end = faceEnd(swept);
        if (end === null) expect(last).toBe(Number.NEGATIVE_INFINITY);
        else expect(Math.abs(end - last)).toBeLessThan(1e-6);
        if (end !== null && end < set.reach - 0.01) shallow++;
      }
    }
    expect(shallow).toBeGreaterThan(100);
  });
});
