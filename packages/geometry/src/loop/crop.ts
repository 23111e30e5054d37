import { pointAt } from '../curve/along.ts';
import type { Box } from '../curve/box.ts';
import { type Curve, line } from '../curve/curve.ts';
import { crossingsAt, partOf, swapAxes } from './clip.ts';
import type { Loop } from './loop.ts';

/** What a box leaves of some wood: the pieces of its outline inside, and the straight cuts along the box where wood runs on beyond it. */
export interface Cropped {
  readonly outline: readonly Curve[];
  readonly cuts: readonly Curve[];
}

/**
 * Crops closed loops to a box, exactly.
 *
 * Along each side of the box the places where the outline passes it are paired in order: wood lies between the first and
 * the second, the third and the fourth (even-odd rule). Outline and cuts together bound the wood inside, in no order.
 */
export function cropLoops(loops: readonly Loop[], box: Box): Cropped {
  let outline: readonly Curve[] = loops.filter(({ closed }) => closed).flatMap(({ curves }) => curves);
  let cuts: readonly Curve[] = [];
  for (const upright of [true, false]) {
    for (const low of [true, false]) {
      const edge = upright ? (low ? box.x0 : box.x1) : low ? box.y0 : box.y1;
      const keep = (curves: readonly Curve[]) =>
        upright ? halfOf(curves, edge, low) : halfOf(curves.map(swapAxes), edge, low).map(swapAxes);
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

const NEAR = 1e-7;

/** The parts of curves on one side of a plumb line: at greater x when `greater`. What runs along the line is left out. */
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
