import { type Curve, line } from './curve.ts';
import { svgArc } from './svg-arc.ts';

/**
 * The chains that a report's path data draws, its numbers taken as x and y, one for each M; Z is drawn as the line back.
 *
 * For the data that reports hold: absolute M, L, A with one radius, Z. `turn` follows the numbers: +1 where angles grow.
 * Throws RangeError on anything else.
 *
 * @example readReportPath('M 0 0 L 5 0 A 5 5 0 0 1 10 5')[0].length // 2
 */
export function readReportPath(data: string): Curve[][] {
  const chains: Curve[][] = [];
  let x = 0;
  let y = 0;
  let start = { x, y };
  for (const [, letter, rest] of data.matchAll(/([A-Za-z])([^A-Za-z]*)/g)) {
    const k = rest!
      .trim()
      .split(/[\s,]+/)
      .filter(Boolean)
      .map(Number);
    const chain = chains.at(-1);
    const wanted = { M: 2, L: 2, A: 7, Z: 0 }[letter!];
    if (k.length !== wanted || !k.every(Number.isFinite) || (letter !== 'M' && chain === undefined))
      throw new RangeError(`not path data of a report: ${letter}${rest}`);
    const [endX, endY] = letter === 'Z' ? [start.x, start.y] : [k.at(-2)!, k.at(-1)!];
    if (letter === 'M') {
      chains.push([]);
      start = { x: endX, y: endY };
    } else if (letter === 'A') {
      chain!.push(...svgArc(x, y, endX, endY, { rx: k[0]!, ry: k[1]!, tilt: 0, large: k[3] === 1, sweep: k[4] === 1 }));
    } else if (endX !== x || endY !== y) chain!.push(line(x, y, endX, endY));
    x = endX;
    y = endY;
  }
  return chains;
}
