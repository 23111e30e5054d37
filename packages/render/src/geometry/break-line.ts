import { type Loop, line, polygon } from '@fielded/geometry';

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

/** A level break line, likewise. */
export function levelBreakLine(y: number, x0: number, x1: number): Loop {
  const plumb = breakLine(0, x0, x1);
  return { ...plumb, curves: plumb.curves.map((c) => line(c.y0, y + c.x0, c.y1, y + c.x1)) };
}
