import { type Loop, polygon } from '@fielded/geometry';

/** A straight stroke. */
export function stroke(x0: number, y0: number, x1: number, y1: number): Loop {
  return polygon(
    [
      [x0, y0],
      [x1, y1],
    ],
    false,
  );
}
