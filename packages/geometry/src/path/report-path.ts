import { type Curve, line } from '../curve/curve.ts';
import type { Loop } from '../loop/loop.ts';
import { svgArc } from './svg-arc.ts';

/** The count of numbers that each command of a report's path data takes. */
const NUMBERS: Readonly<Record<string, number>> = { M: 2, L: 2, A: 7, Z: 0 };

/**
 * The loops that a report's path data draws, mm, one for each M, with x and y as they are written. A loop that ends in Z is closed,
 * and Z is the line back to its start.
 *
 * Reads what reports hold: absolute M, L, A with two equal radii, and Z. An arc's `turn` is +1 where its angle grows in the written
 * coordinates. Empty text gives no loops; a line without length is left out.
 *
 * @throws RangeError for any other command or number.
 *
 * @example readLoops('M0 0L10 0A10 10 0 0 1 0 10Z')[0].curves.length // 3
 */
export function readLoops(data: string): Loop[] {
  const loops: { curves: Curve[]; closed: boolean }[] = [];
  let [startX, startY, x, y] = [0, 0, 0, 0];
  for (const [, letter, rest] of data.matchAll(/([A-Za-z])([^A-Za-z]*)/g)) {
    const k = rest!
      .trim()
      .split(/[\s,]+/)
      .filter(Boolean)
      .map(Number);
    // M must come first, and each command has its count of numbers.
    const loop = loops.at(-1);
    if (k.length !== NUMBERS[letter!] || !k.every(Number.isFinite) || (letter !== 'M' && loop === undefined))
      throw new RangeError(`not path data of a report: ${letter}${rest}`);
    const [endX, endY] = letter === 'Z' ? [startX, startY] : [k.at(-2)!, k.at(-1)!];
    if (letter === 'M') {
      loops.push({ curves: [], closed: false });
      [startX, startY] = [endX, endY];
    } else if (letter === 'A') {
      const shape = { rx: k[0]!, ry: k[1]!, tilt: 0, large: k[3] === 1, sweep: k[4] === 1 };
      loop!.curves.push(...svgArc(x, y, endX, endY, shape));
    } else {
      if (endX !== x || endY !== y) loop!.curves.push(line(x, y, endX, endY));
      if (letter === 'Z') loop!.closed = true;
    }
    [x, y] = [endX, endY];
  }
  return loops.filter(({ curves }) => curves.length > 0);
}

/** The chains of a report's path data, closed or not: the curves of `readLoops`. */
export function readReportPath(data: string): (readonly Curve[])[] {
  return readLoops(data).map(({ curves }) => curves);
}
