import { type Box, type Loop, polygon } from '@fielded/geometry';
import type { PathItem } from '../scene.ts';
import { path } from '../scene.ts';

const APART = 2.6;
const LEAST = 9;

/** Long grain along a part: sparse thin strokes of uneven length, the same every time. */
export function drawGrain(key: string, part: Box, upright: boolean): PathItem {
  const [across0, across1] = upright ? [part.x0, part.x1] : [part.y0, part.y1];
  const [along0, along1] = upright ? [part.y0, part.y1] : [part.x0, part.x1];
  const rows = Math.floor((across1 - across0) / APART);
  const strokes: Loop[] = [];
  for (let row = 1; row < rows; row += 1) {
    const across = across0 + ((across1 - across0) * row) / rows;
    let at = along0 + 3 + scatter(row, 0) * 24;
    for (let n = 1; at < along1 - LEAST; n += 1) {
      const end = Math.min(along1 - 3, at + LEAST + scatter(row, n) * 34);
      strokes.push(
        polygon(
          upright
            ? [
                [across, at],
                [across, end],
              ]
            : [
                [at, across],
                [end, across],
              ],
          false,
        ),
      );
      at = end + 14 + scatter(row, -n) * 30;
    }
  }
  return path(key, 'grain', strokes);
}

/** Draws the grain of a part. */
export type DrawGrain = typeof drawGrain;

/** No grain, where a drawing is made for its size alone: grain lies within its part. */
export const noGrain: DrawGrain = (key) => path(key, 'grain', []);

/** Length of an arrow's head and half of its width, mm; no arrow is drawn where less than both heads would fit. */
const HEAD = 1.6;
const HALF_HEAD = 0.5;
const LONGEST = 16;

/** Which way the grain runs, as an arrow with a head at each end in the middle of a part. */
export function drawGrainArrow(key: string, part: Box, upright: boolean): PathItem[] {
  const length = Math.min(LONGEST, 0.6 * (upright ? part.y1 - part.y0 : part.x1 - part.x0));
  if (length < 2 * HEAD) return [];
  const [x, y] = [(part.x0 + part.x1) / 2, (part.y0 + part.y1) / 2];
  const at = (along: number, beside: number): readonly [number, number] =>
    upright ? [x + beside, y + along] : [x + along, y + beside];
  const head = (end: 1 | -1) => {
    const tip = (end * length) / 2;
    return polygon([at(tip, 0), at(tip - end * HEAD, HALF_HEAD), at(tip - end * HEAD, -HALF_HEAD)]);
  };
  return [
    path(`${key} line`, 'dimension', [polygon([at(-length / 2, 0), at(length / 2, 0)], false)]),
    path(`${key} heads`, 'arrow', [head(1), head(-1)]),
  ];
}

/** A number from 0 to 1 that looks like chance and is not (integer hash after Wang, 2007). */
function scatter(row: number, n: number): number {
  let x = (row * 7919 + n * 104729) | 0;
  x = x ^ 61 ^ (x >>> 16);
  x = Math.imul(x, 9);
  x ^= x >>> 4;
  x = Math.imul(x, 0x27d4eb2d);
  return ((x ^ (x >>> 15)) >>> 0) / 2 ** 32;
}
