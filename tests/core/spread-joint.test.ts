import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Profile } from '../../packages/core/src/profile/profile.ts';
import { evaluate } from '../../packages/core/src/report/evaluate.ts';
import { createJoint, type JointFigures } from '../../packages/core/src/spread/joint.ts';
import { MOVE, movePlace } from '../../packages/core/src/spread/moves.ts';
import { recutDepths } from '../../packages/core/src/spread/recut.ts';
import { arc, type Curve, line } from '../../packages/geometry/src/curve.ts';
import { cut, plainJob, profile } from './joints-to-spread.ts';

const figures = (): JointFigures => ({ clearance: 0, frontMost: 0, frontLeast: 0 });

const anyProfile = fc
  .record({
    shape: fc.constantFrom('rebate', 'bevel', 'cove', 'ovolo', 'ogee' as const),
    reach: fc.integer({ min: 4, max: 40 }),
    depth: fc.integer({ min: 1, max: 9 }),
    land: fc.integer({ min: 0, max: 12 }),
    shoulder: fc.integer({ min: 0, max: 3 }),
  })
  .map(({ shape, reach, depth, land, shoulder }) => {
    const step = shape === 'rebate' ? 0 : Math.min(shoulder, depth - 0.5);
    const flat = shape === 'rebate' ? 0 : Math.max(0, Math.min(land, reach - (depth - step) - 0.5));
    return profile(shape, Math.max(reach, depth + 1), depth, flat, step);
  });
/** An outline that wanders up and down, of lines and arcs, from the edge to the face. */
const anyWanderer = fc
  .array(
    fc.record({
      run: fc.double({ min: 0.8, max: 6, noNaN: true }),
      depth: fc.double({ min: 1, max: 9, noNaN: true }),
      bend: fc.constantFrom(-1, 0, 1 as const),
      step: fc.constantFrom(0, 0, 1, -0.7),
    }),
    { minLength: 2, maxLength: 7 },
  )
  .map((legs): Profile => {
    const chain: Curve[] = [];
    let x = 0;
    let y = 5;
    for (const { run, depth, bend, step } of legs) {
      chain.push(bowed(x, y, x + run, depth, bend));
      x += run;
      y = depth;
      if (step !== 0) chain.push(line(x, y, x, y + step));
      y += step;
    }
    chain.push(line(x, y, x, 0));
    return { shape: 'outline', reach: x, depth: 9, chain };
  });

/** A line, or an arc bent either way that stays well under a half circle. */
function bowed(x0: number, y0: number, x1: number, y1: number, bend: -1 | 0 | 1): Curve {
  if (bend === 0) return line(x0, y0, x1, y1);
  const steep = 1.5 * (x1 - x0) < Math.abs(y1 - y0);
  const chord = Math.hypot(x1 - x0, y1 - y0);
  const radius = chord * (steep ? 40 : 0.9);
  const toCentre = Math.sqrt(radius ** 2 - (chord / 2) ** 2) * bend;
  const cx = (x0 + x1) / 2 - ((y1 - y0) / chord) * toCentre;
  const cy = (y0 + y1) / 2 + ((x1 - x0) / chord) * toCentre;
  return arc(x0, y0, x1, y1, cx, cy, bend);
}

const anyCut = fc.record({
  shape: fc.oneof(anyProfile, anyWanderer),
  side: fc.constantFrom('front', 'back' as const),
  run: fc.constantFrom('under', 'over' as const),
  tilt: fc.constantFrom(0, Math.PI / 2, 0.3),
});
const off = fc.double({ min: -0.6, max: 0.6, noNaN: true });

describe('sliding a joint’s surfaces', () => {
  it('gives what cutting the section anew gives, for any one to four cuts and any moves', () => {
    fc.assert(
      fc.property(
        fc.array(anyCut, { minLength: 1, maxLength: 4 }),
        fc.array(off, { minLength: 12, maxLength: 12 }),
        fc.double({ min: 0.1, max: 12, noNaN: true }),
        (made, moves, into) => {
          const cuts = made.map(({ shape, side, run, tilt }, index) =>
            cut(`cut ${index}`, side, shape, { run: tilt > 1 ? 'under' : run, tilt }),
          );
          const job = plainJob({ cuts, panel: { thickness: 30, measured: 30.2, sawn: 'flat' } });
          const joint = createJoint(job);
          const slid = figures();
          joint.measure(moves, slid, into);
          const depths = { front: 0, back: 0 };
          recutDepths(job, cuts)(moves, into, depths);
          const thickness =
            30.2 + moves[MOVE.thickness]! - depths.front - depths.back + 2 * Math.max(0, moves[MOVE.film]!);
          expect(slid.clearance).toBeCloseTo(6.4 + moves[MOVE.grooveWidth]! - thickness, 7);
          expect(slid.frontMost).toBeCloseTo(depths.front - 7.5, 7);
        },
      ),
      { numRuns: 1500, endOnFailure: true },
    );
  });

  it('gives what the whole report says of a job with those sizes', () => {
    fc.assert(
      fc.property(
        fc.array(anyCut, { minLength: 1, maxLength: 3 }),
        fc.array(off, { minLength: 12, maxLength: 12 }),
        (made, moves) => {
          const cuts = made.map(({ shape, side, run }, index) => cut(`cut ${index}`, side, shape, { run }));
          const job = plainJob({ cuts, panel: { thickness: 30, measured: 30, sawn: 'flat' } });
          const slid = figures();
          createJoint(job).measure([moves[0]!, moves[1]!, 0, 0, ...moves.slice(4)], slid);
          const { frame, panel } = job;
          const { fit } = evaluate({
            ...job,
            panel: { ...panel, measured: 30 + moves[0]! },
            frame: { ...frame, groove: { ...frame.groove, width: 6.4 + moves[1]! } },
            cuts: cuts.map((each, k) => ({
              ...each,
              depth: each.depth + moves[movePlace(k)]!,
              reach: each.reach + moves[movePlace(k) + 1]!,
            })),
          });
          fc.pre(fit.clearance !== null);
          expect(slid.clearance).toBeCloseTo(fit.clearance!, 7);
          if (fit.verdict === 'loose' || fit.verdict === 'sliding')
            expect(slid.frontMost).toBeCloseTo(fit.frontFace!.most, 7);
        },
      ),
      { numRuns: 400, endOnFailure: true },
    );
  });

  it('cuts anew where a cut leaves a lip over wood it clears, since there is no one depth to slide', () => {
    const points = [
      [0, 12],
      [3, 12],
      [3, 13],
      [13, 13],
      [13, 3],
      [6, 0],
    ] as const;
    const chain = points.slice(1).map(([x, y], i) => line(points[i]![0], points[i]![1], x, y));
    const lip = cut('lip', 'front', { shape: 'outline', reach: 6, depth: 12, chain });
    const job = plainJob({ cuts: [lip], panel: { thickness: 20, measured: 20, sawn: 'flat' } });
    const slid = figures();
    createJoint(job).measure(new Float64Array(6), slid);
    // The lip stands to the face over the groove's mouth: what counts is the whole thickness, not the slot under it.
    expect(slid.clearance).toBeCloseTo(evaluate(job).fit.clearance!, 9);
    expect(slid.clearance).toBeCloseTo(6.4 - 20, 0);
  });
});
