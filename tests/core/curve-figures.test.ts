// Lengths, angles, turns and distances of curves away from the origin, against figures of plane geometry.
import { describe, expect, it } from 'vitest';
import { arcAngle, curveLength } from '../../packages/geometry/src/curve/along.ts';
import { arc, line, turnCurve } from '../../packages/geometry/src/curve/curve.ts';
import { distanceTo } from '../../packages/geometry/src/curve/distance.ts';

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
