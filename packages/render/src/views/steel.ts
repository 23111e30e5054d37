import type { KnifeReport } from '@fielded/core';
import { type Curve, type Loop, line, loopsBox, polygon, poseLoops, readLoops } from '@fielded/geometry';
import { levelBreakLine } from '../geometry/break-line.ts';
import type { Item } from '../scene.ts';
import { path } from '../scene.ts';

/** A knife laid on the paper, seen on its cutting face, the tip at (0, 0) and pointing down; paper mm at full size. */
export interface LaidKnife {
  /** Where s grows: +1 to the right, -1 to the left. */
  readonly way: 1 | -1;
  readonly knife: readonly Loop[];
  readonly wood: readonly Loop[];
  readonly limiter: readonly Loop[];
}

/** How far the blank is shown beyond the outline before it is broken off. */
const BLANK_SHOWN = 10;

/**
 * Lays a knife down so that its cutting face looks at the reader.
 *
 * With s growing upwards on the machine, as for a cutter under the work, a head that turns anticlockwise (from above)
 * shows its faces with s to the left: the face looks along z × u, and the reader looks against that.
 */
export function layKnife(knife: KnifeReport): LaidKnife {
  const { run, rotation } = knife.groundFor;
  const way = (run === 'under') === (rotation === 'counterclockwise') ? -1 : 1;
  // From (s, t) to the paper: s to the right or left, t up.
  const lay = (data: string) => poseLoops({ xx: way, xy: 0, yx: 0, yy: -1, x0: 0, y0: 0 }, readLoops(data));
  return {
    way,
    knife: lay(knife.outline),
    wood: lay(knife.wood.outline),
    limiter: knife.limiter ? lay(knife.limiter.outline) : [],
  };
}

/** The blank that an outline is ground on: its two sides up to where it is broken off, above everything of the outline. */
export function drawSteelBlank(outline: readonly Loop[], key: string): { items: Item[]; outlines: Curve[] } {
  const curves = outline.flatMap((loop) => loop.curves);
  const [first, last] = [curves[0]!, curves[curves.length - 1]!];
  const top = loopsBox(outline)!.y0 - BLANK_SHOWN;
  const sides = [line(first.x0, first.y0, first.x0, top), line(last.x1, last.y1, last.x1, top)];
  const [left, right] = [Math.min(first.x0, last.x1), Math.max(first.x0, last.x1)];
  return {
    items: [
      path(`${key} face`, 'removed', [closeAt(outline, top)]),
      path(
        `${key} sides`,
        'thin',
        sides.map((side) => ({ curves: [side], closed: false })),
      ),
      path(`${key} break`, 'break', [levelBreakLine(top, left, right)]),
    ],
    outlines: sides,
  };
}

function closeAt(outline: readonly Loop[], top: number): Loop {
  const curves = outline.flatMap((loop) => loop.curves);
  const [first, last] = [curves[0]!, curves[curves.length - 1]!];
  const back = polygon(
    [
      [last.x1, last.y1],
      [last.x1, top],
      [first.x0, top],
      [first.x0, first.y0],
    ],
    false,
  );
  return { curves: [...curves, ...back.curves], closed: true };
}
