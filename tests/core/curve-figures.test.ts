// Lengths, angles, turns and distances of curves away from the origin, against figures of plane geometry.
import { describe, expect, it } from 'vitest';
import { arcAngle, curveLength, splitAtExtremes } from '../../packages/geometry/src/curve/along.ts';
import { lineMeetsBox } from '../../packages/geometry/src/curve/box.ts';
import { arc, type Curve, line, turnCurve } from '../../packages/geometry/src/curve/curve.ts';
import { distanceTo } from '../../packages/geometry/src/curve/distance.ts';
import { type Piece, splitCurve } from '../../packages/geometry/src/curve/piece.ts';

describe('the angle of an arc', () => {
  // About (3, 4): from the east point to points a multiple of 30° round.
  it.each([30, 90, 150, 180, 240, 330])(
    'is %s° one way round, and what is left of the circle the other way',
    (degrees) => {
      const angle = (degrees * Math.PI) / 180;
      const to = [3 + 5 * Math.cos(angle), 4 + 5 * Math.sin(angle)] as const;
      expect(arcAngle(arc(8, 4, ...to, 3, 4, 1))).toBeCloseTo(angle, 12);
      expect(arcAngle(arc(8, 4, ...to, 3, 4, -1))).toBeCloseTo(2 * Math.PI - angle, 12);
      expect(curveLength(arc(8, 4, ...to, 3, 4, 1))).toBeCloseTo(5 * angle, 11);
    },
  );
});

it('a curve turned about the origin has its ends and its centre turned', () => {
  // By the angle of the triangle 3, 4, 5: (5, 10) goes to (−5, 10), (10, 5) to (2, 11), (5, 5) to (−1, 7).
  const turned = turnCurve(arc(5, 10, 10, 5, 5, 5, -1), 0.6, 0.8);
  for (const [key, value] of Object.entries({ x0: -5, y0: 10, x1: 2, y1: 11, cx: -1, cy: 7, r: 5, turn: -1 }))
    expect(turned[key as 'x0'], key).toBeCloseTo(value, 12);
});

describe('the distance of a point', () => {
  // A line along (4, 3)/5 from (2, 1), 10 long: points beside it, before it and past it.
  const beside = (along: number, off: number) => [2 + 0.8 * along - 0.6 * off, 1 + 0.6 * along + 0.8 * off] as const;
  it.each([
    [4, 3, 3],
    [9, -7, 7],
    [-3, 4, 5],
    [22, 5, 13],
  ])('%d along a line and %d off it is %d', (along, off, distance) => {
    expect(distanceTo(line(2, 1, 10, 7), ...beside(along, off))).toBeCloseTo(distance, 12);
  });
});

describe('an arc round most of its circle', () => {
  // About (3, 4), radius 5, from (6, 8) anticlockwise to (6, 0), and back.
  const [there, back] = [arc(6, 8, 6, 0, 3, 4, 1), arc(6, 0, 6, 8, 3, 4, -1)];

  it('is split at its top, its left and its bottom; the rest of the circle at its right', () => {
    const stops = (c: Curve) => splitAtExtremes([c]).map(({ x1, y1 }) => [x1, y1]);
    expect(stops(there)).toEqual([
      [3, 9],
      [-2, 4],
      [3, -1],
      [6, 0],
    ]);
    expect(stops(arc(6, 0, 6, 8, 3, 4, 1))).toEqual([
      [8, 4],
      [6, 8],
    ]);
  });

  it('has an upper and a lower piece, whichever way it runs; the rest of the circle too', () => {
    const pieces = (c: Curve) => {
      const out: Piece[] = [];
      splitCurve(c, out);
      return out.map(({ x0, y0, x1, y1, turn }) => [x0, y0, x1, y1, turn]);
    };
    const [lower, upper] = [
      [-2, 4, 6, 0, 1],
      [-2, 4, 6, 8, -1],
    ];
    expect(pieces(there)).toEqual([lower, upper]);
    expect(pieces(back)).toEqual([lower, upper]);
    expect(pieces(arc(6, 8, 6, 0, 3, 4, -1))).toEqual([
      [6, 8, 8, 4, -1],
      [6, 0, 8, 4, 1],
    ]);
  });

  it('that begins and ends on one half has three pieces', () => {
    const out: Piece[] = [];
    splitCurve(arc(6, 8, 0, 8, 3, 4, -1), out);
    expect(out.map(({ x0, x1, turn }) => [x0, x1, turn])).toEqual([
      [6, 8, -1],
      [-2, 8, 1],
      [-2, 0, -1],
    ]);
  });
});

describe('a slanting line and a box from (10, 20) to (14, 23)', () => {
  const box = { x0: 10, y0: 20, x1: 14, y1: 23 };
  it.each([
    ['through its middle', 8, 18, 16, 25, true],
    ['over one corner of it', 12, 18, 15, 22, true],
    ['past one corner', 13, 18, 15, 21, false],
    ['past the corner across', 8, 22, 11, 24.5, false],
    ['past a third', 9, 21, 11, 18.5, false],
    ['over the third', 9, 22, 11, 19.5, true],
    ['past the last', 13, 24.5, 15, 22.5, false],
    ['over the last', 12, 24, 15, 21, true],
  ])('%s', (_, x0, y0, x1, y1, meets) => {
    expect(lineMeetsBox(x0, y0, x1, y1, box)).toBe(meets);
    expect(lineMeetsBox(x1, y1, x0, y0, box)).toBe(meets);
  });
});
