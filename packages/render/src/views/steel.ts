import type { KnifeReport } from '@fielded/core';
import { type Curve, type Loop, line, loopsBox, polygon, readLoops } from '@fielded/geometry';
import type { Item } from '../scene.ts';
import { path } from '../scene.ts';
import { breakLevel } from './break-level.ts';

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
  const lay = (data: string) => readLoops(data).map((loop) => layLoop(loop, way));
  return {
    way,
    knife: lay(knife.outline),
    wood: lay(knife.wood.outline),
    limiter: knife.limiter ? lay(knife.limiter.outline) : [],
  };
}

/** From (s, t) to the paper: s to the right or left, t up. */
function layLoop(loop: Loop, way: 1 | -1): Loop {
  const place = (c: Curve): Curve => ({
    x0: way * c.x0,
    y0: -c.y0,
    x1: way * c.x1,
    y1: -c.y1,
    cx: way * c.cx,
    cy: -c.cy,
    r: c.r,
    turn: (-way * c.turn + 0) as Curve['turn'],
  });
  return { ...loop, curves: loop.curves.map(place) };
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
      path(`${key} break`, 'break', [breakLevel(top, left, right)]),
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
