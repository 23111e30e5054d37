import { type Box, type Loop, polygon } from '@fielded/geometry';

/** As long as a figure is tall, 15° at the tip: ISO 129-1. */
export const ARROW_LENGTH = 3.5;
const HALF_WIDTH = ARROW_LENGTH * Math.tan((7.5 * Math.PI) / 180);

/** Where an arrowhead's tip is, and which way it points: (dx, dy) has length 1. */
export interface Arrow {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
}

/** A filled arrowhead. */
export function arrowhead({ x, y, dx, dy }: Arrow): Loop {
  const backX = x - dx * ARROW_LENGTH;
  const backY = y - dy * ARROW_LENGTH;
  return polygon([
    [x, y],
    [backX - dy * HALF_WIDTH, backY + dx * HALF_WIDTH],
    [backX + dy * HALF_WIDTH, backY - dx * HALF_WIDTH],
  ]);
}

/** The box round an arrowhead. */
export function arrowBox({ x, y, dx, dy }: Arrow): Box {
  const backX = x - dx * ARROW_LENGTH;
  const backY = y - dy * ARROW_LENGTH;
  const wide = Math.abs(dy) * HALF_WIDTH;
  const high = Math.abs(dx) * HALF_WIDTH;
  return {
    x0: Math.min(x, backX - wide),
    y0: Math.min(y, backY - high),
    x1: Math.max(x, backX + wide),
    y1: Math.max(y, backY + high),
  };
}
