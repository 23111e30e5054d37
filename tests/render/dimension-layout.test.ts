import { chainLoops, cropLoops, readLoops } from '@fielded/geometry';
import { expect, test } from 'vitest';
import { newBoard } from '../../packages/render/src/dimension/board.ts';
import type { LinearDimension } from '../../packages/render/src/dimension/linear.ts';
import { spread } from '../../packages/render/src/dimension/ordinate.ts';
import { layTiers } from '../../packages/render/src/dimension/tiers.ts';
import { Random } from '../support/random.ts';

function level(key: string, from: number, to: number, text: string = key): LinearDimension {
  const figure = { key, of: key, value: to - from, text, under: '', word: '', label: key, tone: 'plain' as const };
  return { ...figure, side: 'above', from: { x: from, y: 0 }, to: { x: to, y: 0 } };
}

const around = { x0: 0, y0: 0, x1: 100, y1: 40 };
const lay = (...dimensions: LinearDimension[]) =>
  Object.fromEntries(layTiers(dimensions, around, newBoard([], [])).map((drawn) => [drawn.figure.key, drawn]));

test('the first tier stands 10 mm off, and the longer dimension outside the shorter', () => {
  const { short, long } = lay(level('long', 0, 80), level('short', 0, 30));
  expect(short!.lines[0]!.y0).toBe(-10);
  expect(long!.lines[0]!.y0).toBeLessThanOrEqual(-17);
});

test('lengths that meet end to end make a chain, and share the arrow where they meet', () => {
  const { a, b, c } = lay(level('a', 0, 30), level('b', 30, 36), level('c', 36, 80));
  expect(new Set([a, b, c].map((drawn) => drawn!.lines[0]!.y0)).size).toBe(1);
  expect([a, b, c].reduce((count, drawn) => count + drawn!.arrows.length, 0)).toBe(4);
});

test('arrows stand inside where there is room, outside where there is not', () => {
  const { wide, narrow } = lay(level('wide', 0, 40), level('narrow', 50, 54));
  expect(wide!.arrows.map(({ x, dx }) => [x, dx])).toEqual([
    [0, -1],
    [40, 1],
  ]);
  expect(narrow!.arrows.map(({ x, dx }) => [x, dx])).toEqual([
    [50, 1],
    [54, -1],
  ]);
});

test('a figure too long for its length stands beyond it', () => {
  const { a } = lay(level('a', 50, 58, '≈1-63/64'));
  const [box] = a!.marks.texts;
  expect(box!.x0 >= 58 || box!.x1 <= 50).toBe(true);
});

test('extension lines pass the dimension line by 2 mm and start clear of the part', () => {
  const { a } = lay(level('a', 10, 50));
  for (const line of a!.lines.slice(1)) expect([line.y0, line.y1]).toEqual([-1, -12]);
});

test('ordinates stay in order, a pitch apart, and as near as may be', () => {
  expect(spread([0, 100])).toEqual([0, 100]);
  expect(spread([10, 10])).toEqual([7.5, 12.5]);
  const random = new Random(5);
  for (let n = 0; n < 200; n += 1) {
    const wanted = Array.from({ length: 8 }, () => random.between(0, 40)).sort((a, b) => a - b);
    const places = spread(wanted);
    for (let i = 1; i < places.length; i += 1) expect(places[i]! - places[i - 1]!).toBeGreaterThanOrEqual(5 - 1e-9);
    // Least squares: moving any run of touching neighbours together would not come nearer.
    const sum = places.reduce((total, place, i) => total + place - wanted[i]!, 0);
    expect(Math.abs(sum)).toBeLessThan(1e-6);
  }
});

/** Area by Green's theorem: chords, and the segment of each arc. */
function area(data: ReturnType<typeof readLoops>): number {
  return data.reduce((sum, { curves }) => {
    const own = curves.reduce((total, c) => {
      const chord = (c.x0 * c.y1 - c.x1 * c.y0) / 2;
      if (c.turn === 0) return total + chord;
      let sweep = (Math.atan2(c.y1 - c.cy, c.x1 - c.cx) - Math.atan2(c.y0 - c.cy, c.x0 - c.cx)) * c.turn;
      if (sweep < 0) sweep += 2 * Math.PI;
      return total + chord + (c.turn * c.r ** 2 * (sweep - Math.sin(sweep))) / 2;
    }, 0);
    return sum + Math.abs(own);
  }, 0);
}

test('cropping a disc leaves its segments exactly', () => {
  const disc = readLoops('M-10 0A10 10 0 0 1 10 0A10 10 0 0 1 -10 0Z');
  const { outline, cuts } = cropLoops(disc, { x0: -20, y0: -20, x1: 5, y1: 20 });
  // Circle less the segment beyond x = 5, of 120°: r²/2·(θ − sin θ).
  const segment = (100 / 2) * ((2 * Math.PI) / 3 - Math.sin((2 * Math.PI) / 3));
  expect(area(chainLoops([...outline, ...cuts]))).toBeCloseTo(100 * Math.PI - segment, 9);
  const quarter = cropLoops(disc, { x0: 0, y0: 0, x1: 20, y1: 20 });
  expect(area(chainLoops([...quarter.outline, ...quarter.cuts]))).toBeCloseTo(25 * Math.PI, 9);
});

test('what a crop keeps and what it leaves add up', () => {
  const shape = readLoops(
    'M0 16L12 16L12 20L52 20L52 0L32 0L32 1A26.72222222222222 26.72222222222222 0 0 1 12 10L0 10Z',
  );
  const part = (x0: number, x1: number) => {
    const { outline, cuts } = cropLoops(shape, { x0, y0: -50, x1, y1: 50 });
    return area(chainLoops([...outline, ...cuts]));
  };
  for (const x of [3, 11.5, 20, 31.9, 40]) expect(part(-99, x) + part(x, 99)).toBeCloseTo(area(shape), 9);
});
