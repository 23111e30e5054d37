import { type Loop, polygon } from '@fielded/geometry';

/** A level break line with a zigzag in its middle, run on 2 mm past the part at both ends (ISO 128). */
export function breakLevel(y: number, x0: number, x1: number): Loop {
  const left = x0 - 2;
  const right = x1 + 2;
  const middle = (left + right) / 2;
  return polygon(
    [
      [left, y],
      [middle - 2, y],
      [middle - 0.7, y - 1.5],
      [middle + 0.7, y + 1.5],
      [middle + 2, y],
      [right, y],
    ],
    false,
  );
}
