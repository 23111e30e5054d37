// Path data against the language's own way to write decimals.
import { type Curve, depthPath, flipCurve, line, loopsData, paperData, pathData } from '@fielded/geometry';
import { expect, it } from 'vitest';
import { Random } from '../support/random.ts';

/** A length to nine places as `toFixed` has it, without noughts at its end and never -0. */
function plain(mm: number): string {
  const fixed = mm.toFixed(9).replace(/\.?0+$/, '');
  return fixed === '-0' ? '0' : fixed;
}

it('writes numbers to nine places, as the language itself does: 8,000 lengths of every size', () => {
  const random = new Random(71);
  const wrong: string[] = [];
  for (let n = 0; n < 8000; n++) {
    const size = 10 ** random.between(-10, 5);
    const mm = random.oneOf([
      size,
      -size,
      Math.round(size),
      0 - Math.round(size),
      Math.round(size * 1000) / 1000,
    ] as const);
    const [, x] = depthPath([line(mm, 0, mm + 1, 1)]).split(' ');
    // Halves of the last place may be rounded either way.
    const near = x === plain(mm) || Math.abs(Number(x) - mm) < 6e-10;
    if (!near || !/^(0|-?(?=.*[1-9])\d+(\.\d{0,8}[1-9])?)$/.test(x!)) wrong.push(`${mm}: ${x}`);
  }
  expect(wrong).toEqual([]);
});

it('carries where places round up to a whole, and writes no nought with a sign', () => {
  const wrote = (mm: number) => depthPath([line(mm, 0, 50, 50)]).split(' ')[1];
  expect([2.9999999997, 999.9999999999, -1e-10, -0, -0.5, -7, -2.9999999997, 1234.25].map(wrote)).toEqual([
    '3',
    '1000',
    '0',
    '0',
    '-0.5',
    '-7',
    '-3',
    '1234.25',
  ]);
});

it('turns y down from a height, and writes a depth as it is', () => {
  const arc: Curve = { x0: 0, y0: 9, x1: 5, y1: 4, cx: 5, cy: 9, r: 5, turn: 1 };
  expect(pathData([line(0, 20, 5, 20), line(5, 20, 5, 0)], 20, false)).toBe('M 0 0 L 5 0 L 5 20');
  expect(depthPath([line(0, 9, 5, 9), line(5, 9, 5, 0)])).toBe('M 0 9 L 5 9 L 5 0');
  // A mirrored arc sweeps the other way: both readings of one curve say the same.
  expect(depthPath([arc])).toBe(pathData([flipCurve(arc, 30)], 30, false));
  expect(depthPath([arc])).toBe('M 0 9 A 5 5 0 0 1 5 4');
});

it('leaves out what starts and ends in the same place as written, and writes paths longer than the room it has at first', () => {
  expect(depthPath([line(0, 0, 1, 1), line(1, 1, 1 + 1e-11, 1), line(1, 1, 2, 0)])).toBe('M 0 0 L 1 1 L 2 0');
  const many = Array.from({ length: 3000 }, (_, k) => line(k / 7, k / 3, (k + 1) / 7, (k + 1) / 3));
  const long = depthPath(many);
  expect(long.split(' L ')).toHaveLength(3001);
  expect(long.endsWith(`L ${plain(3000 / 7)} 1000`)).toBe(true);
  expect(loopsData([{ curves: many.slice(0, 2), closed: true }], (v) => v.toFixed(1))).toBe('M0.0 0.0L0.1 0.3Z');
  expect(depthPath([])).toBe('');
});

it('writes half a circle as no more than half a turn, either way round', () => {
  const half: Curve = { x0: 0, y0: 0, x1: 10, y1: 0, cx: 5, cy: 0, r: 5, turn: 1 };
  expect(depthPath([half])).toBe('M 0 0 A 5 5 0 0 1 10 0');
  expect(depthPath([{ ...half, turn: -1 }])).toBe('M 0 0 A 5 5 0 0 0 10 0');
});

it('writes loops on the paper to a thousandth, as the language itself does: 8,000 lengths of every size', () => {
  const random = new Random(72);
  const toThousandths = (mm: number) => String(Math.round(mm * 1000) / 1000 || 0);
  const length = () => {
    const size = 10 ** random.between(-5, 5);
    return random.oneOf([
      size,
      -size,
      Math.round(size),
      Math.round(size * 2000) / 2000,
      Math.round(-size * 2000) / 2000,
    ]);
  };
  for (let n = 0; n < 1000; n++) {
    const curves = [line(length(), length(), length(), length()), line(length(), length(), length(), length())];
    const loops = [{ curves, closed: n % 2 === 0 }];
    expect(paperData(loops)).toBe(loopsData(loops, toThousandths));
  }
});
