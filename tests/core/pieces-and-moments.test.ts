// Heights of pieces and moments under threads, off the origin and on either side of an arc's extreme, against plane geometry.
import { describe, expect, it } from 'vitest';
import { arc, line } from '../../packages/geometry/src/curve/curve.ts';
import { highOf, lowOf } from '../../packages/geometry/src/curve/piece.ts';
import { fitBezier } from '../../packages/geometry/src/fit/fit-bezier.ts';
import { momentsUnder } from '../../packages/geometry/src/strips/moments.ts';
import { type Thread, threadChain } from '../../packages/geometry/src/strips/thread.ts';

describe('the least and the greatest height of a piece', () => {
  // A circle of radius 10 about (4, 20): x = 4 + 10·sin, y = 20 ± 10·cos.
  const part = (from: number, to: number, half: -1 | 1) => {
    const at = (x: number) => 20 - half * Math.sqrt(100 - (x - 4) ** 2);
    return { piece: arc(from, at(from), to, at(to), 4, 20, half), ends: [at(from), at(to)] as const };
  };
  it.each([
    ['before its extreme', -4, 2, false],
    ['past it', 6, 12, false],
    ['on both sides of it', -2, 12, true],
  ])('of an arc %s', (_, from, to, within) => {
    for (const half of [-1, 1] as const) {
      const { piece, ends } = part(from, to, half);
      const [low, high] = [Math.min(...ends), Math.max(...ends)];
      expect(lowOf(piece)).toBeCloseTo(within && half === 1 ? 10 : low, 12);
      expect(highOf(piece)).toBeCloseTo(within && half === -1 ? 30 : high, 12);
    }
  });

  it('of a line is at its ends, also where it passes over what would be a centre', () => {
    expect([lowOf(line(-3, 2, 5, 7)), highOf(line(-3, 2, 5, 7))]).toEqual([2, 7]);
    expect([lowOf(line(-3, 7, 5, 2)), highOf(line(-3, 7, 5, 2))]).toEqual([2, 7]);
  });
});

describe('the moments under a boundary given by its depths', () => {
  it('are the integrals of polynomials, by Simpson’s rule, which is exact for them', () => {
    const height = 20;
    // Depths 9 to 2 over x 1 to 5, then 2 to 6 up to 8: three polynomials at most of the third degree.
    const threads: Thread[] = [];
    const falling = [line(1, 9, 3, 5.5), line(3, 5.5, 5, 2)];
    threadChain([...falling, line(5, 2, 6.5, 4), line(6.5, 4, 8, 6)], 0, threads, height);
    const depth = (x: number) => (x <= 5 ? 9 - (7 * (x - 1)) / 4 : 2 + (4 * (x - 5)) / 3);
    const simpson = (f: (x: number) => number, a: number, b: number) =>
      ((b - a) / 6) * (f(a) + 4 * f((a + b) / 2) + f(b));
    const over = (f: (x: number) => number, a: number, b: number) => simpson(f, a, 5) + simpson(f, 5, b);
    for (const [a, b] of [
      [1, 8],
      [2.5, 7],
    ] as const) {
      const y = (x: number) => height - depth(x);
      const found = momentsUnder(threads[0]!, a, b);
      expect(found.area).toBeCloseTo(over(y, a, b), 10);
      expect(found.x).toBeCloseTo(
        over((x) => x * y(x), a, b),
        9,
      );
      expect(found.y).toBeCloseTo(
        over((x) => y(x) ** 2 / 2, a, b),
        9,
      );
    }
  });
});

describe('a Bézier curve whose control points lie on one line', () => {
  // Along (4, 3)/5 from (3, 5): stations 0, 20, −10, 5 turn back where 3(a(1 − 4u + 3u²) + b(2u − 3u²)) + 3cu² is 0.
  const [a, b, c] = [20, -10, 5];
  const at = (s: number) => ({ x: 3 + 0.8 * s, y: 5 + 0.6 * s });
  const station = (u: number) => 3 * (1 - u) ** 2 * u * a + 3 * (1 - u) * u * u * b + u ** 3 * c;
  it('is the lines to where it turns back and to its end, away from the origin', () => {
    // (3a − 3b + c)u² − (4a − 2b)u + a = 0, halved coefficients: 95u² − 100u + 20 = 0.
    const root = Math.sqrt(100 ** 2 - 4 * 95 * 20);
    const turns = [(100 - root) / 190, (100 + root) / 190].map(station);
    const { chain } = fitBezier([at(0), at(a), at(b), at(c)]);
    const ends = [...turns, c].map(at);
    expect(chain).toHaveLength(3);
    chain.forEach((piece, i) => {
      expect(piece.turn).toBe(0);
      expect(piece.x1).toBeCloseTo(ends[i]!.x, 9);
      expect(piece.y1).toBeCloseTo(ends[i]!.y, 9);
    });
  });

  it('that leaves the line by a hair is no line', () => {
    const off = { x: at(b).x - 0.006, y: at(b).y + 0.008 };
    expect(fitBezier([at(0), at(6), off, at(30)]).chain.some(({ turn }) => turn !== 0)).toBe(true);
  });
});
