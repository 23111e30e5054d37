import fc from 'fast-check';
import type { Profile } from '../../packages/core/src/profile/profile.ts';
import { arc, type Curve, line } from '../../packages/geometry/src/curve/curve.ts';
import { profile } from './joints-to-spread.ts';

/** A named shape in whole millimetres. */
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
      quarter: fc.constantFrom(false, false, false, true),
    }),
    { minLength: 2, maxLength: 7 },
  )
  .map((legs): Profile => {
    const chain: Curve[] = [];
    let x = 0;
    let y = 5;
    for (const { run, depth, bend, step, quarter } of legs) {
      const leg = quarter && depth < y - 0.5 ? upright(x, y, y - depth) : bowed(x, y, x + run, depth, bend);
      chain.push(leg);
      x = leg.x1;
      y = depth;
      if (step !== 0) chain.push(line(x, y, x, y + step));
      y += step;
    }
    chain.push(line(x, y, x, 0));
    return { shape: 'outline', reach: x, depth: 9, chain };
  });

/** mm: the largest radius of the quarters that an outline starts upright with, and of any shape here. */
export const LARGEST_QUARTER = 9;

/** A quarter of a circle that starts upright, towards the face, and ends level. */
function upright(x: number, y: number, r: number): Curve {
  return arc(x, y, x + r, y - r, x + r, y, 1);
}

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

/** A cut's shape and how it is run. */
export const anyCut = fc.record({
  shape: fc.oneof(anyProfile, anyWanderer),
  side: fc.constantFrom('front', 'back' as const),
  run: fc.constantFrom('under', 'over' as const),
  tilt: fc.constantFrom(0, Math.PI / 2, 0.3),
});
