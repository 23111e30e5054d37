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
  const outline = loops.filter(({ closed }) => closed).flatMap(({ curves }) => curves);
  const sides: readonly Side[] = [
    { upright: true, at: box.x0, greater: true },
    { upright: true, at: box.x1, greater: false },
    { upright: false, at: box.y0, greater: true },
    { upright: false, at: box.y1, greater: false },
  ];
  return sides.reduce(cropAt, { outline, cuts: [] });
}

/** A side of the box: an upright or a level line, and whether the box lies where x, or y, is greater. */
interface Side {
  readonly upright: boolean;
  readonly at: number;
  readonly greater: boolean;
}

/** Keeps what lies on the inner side of a line, and cuts along the line between the ends that lie on it. */
function cropAt({ outline, cuts }: Cropped, side: Side): Cropped {
  const keptOutline = keepInside(outline, side);
  const keptCuts = keepInside(cuts, side);
  return { outline: keptOutline, cuts: [...keptCuts, ...cutsAlong([...keptOutline, ...keptCuts], side)] };
}

function keepInside(curves: readonly Curve[], { upright, at, greater }: Side): Curve[] {
  return upright ? halfOf(curves, at, greater) : halfOf(curves.map(swapAxes), at, greater).map(swapAxes);
}

/** Lines along a side between the first and the second end that lies on it, the third and the fourth, and so on. */
function cutsAlong(curves: readonly Curve[], { upright, at }: Side): Curve[] {
  const ends = curves.flatMap((c) => {
    const { x0, y0, x1, y1 } = upright ? c : swapAxes(c);
    return [
      [x0, y0],
      [x1, y1],
    ].flatMap(([across, along]) => (Math.abs(across! - at) < NEAR ? [along!] : []));
  });
  ends.sort((a, b) => a - b);
  const made: Curve[] = [];
  for (let i = 0; i + 1 < ends.length; i += 2) {
    if (ends[i + 1]! - ends[i]! < NEAR) continue;
    const cut = line(at, ends[i]!, at, ends[i + 1]!);
    made.push(upright ? cut : swapAxes(cut));
  }
  return made;
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
