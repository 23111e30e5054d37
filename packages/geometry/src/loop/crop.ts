import { pointAt } from '../curve/along.ts';
import type { Box } from '../curve/box.ts';
import { type Curve, line } from '../curve/curve.ts';
import { crossingsAt, partOf, swapAxes } from './clip.ts';
import type { Loop } from './loop.ts';

/** What a box leaves of an area: the parts of its outline inside the box, and straight cuts along the box where the area runs on beyond it. */
export interface Cropped {
  readonly outline: readonly Curve[];
  readonly cuts: readonly Curve[];
}

/**
 * Crops closed loops to a box, exactly.
 *
 * The outline's crossings of each side of the box are sorted and paired: the area lies between the first and the second, the third
 * and the fourth, and so on (even-odd rule). Outline and cuts together bound the area inside, in no order. Open loops are left out.
 */
export function cropLoops(loops: readonly Loop[], box: Box): Cropped {
  let outline: readonly Curve[] = loops.filter(({ closed }) => closed).flatMap(({ curves }) => curves);
  let cuts: readonly Curve[] = [];
  for (const upright of [true, false]) {
    for (const low of [true, false]) {
      const edge = upright ? (low ? box.x0 : box.x1) : low ? box.y0 : box.y1;
      const keep = (curves: readonly Curve[]) =>
        upright ? halfOf(curves, edge, low) : halfOf(curves.map(swapAxes), edge, low).map(swapAxes);
      // Keep what lies on the inner side, then cut along the side between the ends that lie on it.
      const keptOutline = keep(outline);
      const keptCuts = keep(cuts);
      const along = [...keptOutline, ...keptCuts].flatMap((c) => {
        const ends = upright
          ? [
              [c.x0, c.y0],
              [c.x1, c.y1],
            ]
          : [
              [c.y0, c.x0],
              [c.y1, c.x1],
            ];
        return ends.filter(([across]) => Math.abs(across! - edge) < NEAR).map(([, at]) => at!);
      });
      along.sort((a, b) => a - b);
      const made: Curve[] = [];
      for (let i = 0; i + 1 < along.length; i += 2) {
        if (along[i + 1]! - along[i]! < NEAR) continue;
        made.push(upright ? line(edge, along[i]!, edge, along[i + 1]!) : line(along[i]!, edge, along[i + 1]!, edge));
      }
      outline = keptOutline;
      cuts = [...keptCuts, ...made];
    }
  }
  return { outline, cuts };
}

/** Ends closer to a side of the box than this (mm) lie on it. */
const NEAR = 1e-7;

/** The parts of curves on one side of the upright line at `x`: at greater x when `greater`. Parts that run along the line are left out. */
function halfOf(curves: readonly Curve[], x: number, greater: boolean): Curve[] {
  return curves.flatMap((curve) => {
    const at = [0, ...crossingsAt(curve, x), 1];
    const kept: Curve[] = [];
    for (let i = 1; i < at.length; i += 1) {
      const middle = pointAt(curve, (at[i - 1]! + at[i]!) / 2).x - x;
      if (greater ? middle > NEAR : middle < -NEAR) kept.push(partOf(curve, at[i - 1]!, at[i]!));
    }
    return kept;
  });
}
