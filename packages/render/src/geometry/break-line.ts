import { type Loop, polygon } from '@fielded/geometry';

/** A plumb break line with a zigzag in its middle, run on 2 mm past the part at both ends (ISO 128). */
export function breakLine(x: number, y0: number, y1: number): Loop {
  const top = Math.min(y0, y1) - 2;
  const bottom = Math.max(y0, y1) + 2;
  const middle = (top + bottom) / 2;
  return polygon(
    [
      [x, top],
      [x, middle - 2],
      [x - 1.5, middle - 0.7],
      [x + 1.5, middle + 0.7],
      [x, middle + 2],
      [x, bottom],
    ],
    false,
  );
}
