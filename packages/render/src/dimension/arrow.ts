import type { Box } from '../geometry/box.ts';
import type { Loop } from '../geometry/path.ts';
import { loopsBox, polygon } from '../geometry/path.ts';

/** As long as a figure is tall, 15° at the tip: ISO 129-1. */
export const ARROW_LENGTH = 3.5;
const HALF_WIDTH = ARROW_LENGTH * Math.tan((7.5 * Math.PI) / 180);

/** A filled arrowhead with its tip at (x, y), pointing along (dx, dy), which has length 1. */
export function arrowhead(x: number, y: number, dx: number, dy: number): Loop {
  const backX = x - dx * ARROW_LENGTH;
  const backY = y - dy * ARROW_LENGTH;
  return polygon([
    [x, y],
    [backX - dy * HALF_WIDTH, backY + dx * HALF_WIDTH],
    [backX + dy * HALF_WIDTH, backY - dx * HALF_WIDTH],
  ]);
}

/** The box round an arrowhead. */
export function arrowBox(arrow: Loop): Box {
  return loopsBox([arrow])!;
}
