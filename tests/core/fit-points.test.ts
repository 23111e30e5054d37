import type { NamedProfile } from '@fielded/core';
import type { Chain } from '@fielded/geometry';
import { describe, expect, it } from 'vitest';
import { profileChain } from '../../packages/core/src/profile/chain.ts';
import { arcAngle, cornerAngle, curveLength, pointAlong } from '../../packages/geometry/src/curve/along.ts';
import type { Point } from '../../packages/geometry/src/curve/point.ts';
import { fitPoints } from '../../packages/geometry/src/fit/fit-points.ts';
import { farthest } from '../support/measured-chain.ts';
import { Random } from '../support/random.ts';
import { leastProcessorTime } from '../support/timing.ts';

const ogee = profileChain({ shape: 'ogee', reach: 38, depth: 9, land: 11, shoulder: 1.5, balance: 0.5 });
const cove = profileChain({ shape: 'cove', reach: 14, depth: 5, land: 9, shoulder: 0, balance: 0.5 } as NamedProfile);

/** Points at equal steps along a profile, each off by up to `scatter` mm in x and in y. */
function scanOf(chain: Chain, count: number, scatter: number, seed = 1): { x: number; y: number }[] {
  const random = new Random(seed);
  const lengths = chain.map(curveLength);
  const total = lengths.reduce((sum, length) => sum + length, 0);
  return Array.from({ length: count }, (_, i) => {
    let at = (total * i) / (count - 1);
    let k = 0;
    while (k < chain.length - 1 && at > lengths[k]!) at -= lengths[k++]!;
    const p = pointAlong(chain[k]!, Math.min(1, at / lengths[k]!), arcAngle(chain[k]!));
    return { x: p.x + random.between(-scatter, scatter), y: p.y + random.between(-scatter, scatter) };
  });
}

describe('a scanned outline', () => {
  it.each([
    ['ogee', 5000, 0, 12],
    ['ogee', 5000, 0.002, 25],
    ['ogee', 5000, 0.004, 30],
    ['ogee', 1000, 0.002, 15],
    ['ogee', 200, 0, 16],
    ['cove', 5000, 0, 8],
    ['cove', 1000, 0.003, 15],
    ['cove', 40, 0.002, 10],
  ] as const)(
    '%s of %i points that scatter by %f mm is fitted to 0.01 mm in at most %i pieces',
    (name, count, scatter, most) => {
      const points = scanOf(name === 'ogee' ? ogee : cove, count, scatter);
      const { chain, deviation } = fitPoints(points, 0.01);
      expect(deviation).toBeLessThanOrEqual(0.01);
      expect(chain.length).toBeLessThanOrEqual(most);
      const some = points.filter((_, i) => i % Math.ceil(count / 50) === 0).map(({ x, y }) => [x, y] as const);
      expect(farthest(some, chain)).toBeLessThanOrEqual(deviation + 1e-6);
      chain.forEach((c, i) => {
        const next = chain[i + 1];
        if (!next) return;
        expect(Math.hypot(next.x0 - c.x1, next.y0 - c.y1)).toBeLessThan(1e-9);
      });
    },
  );

  it('finds the corner of two lines that both lean, though no point lies on it', () => {
    // From (0, 0) up to (20, 5), then down to (27, −13): the points next to the corner lie 0.13 and 0.21 mm from it.
    const way = (from: Point, to: Point, shares: (i: number) => number) =>
      Array.from({ length: 60 }, (_, i) => shares(i)).map((u) => ({
        x: from.x + u * (to.x - from.x),
        y: from.y + u * (to.y - from.y),
      }));
    const [start, corner, end] = [
      { x: 0, y: 0 },
      { x: 20, y: 5 },
      { x: 27, y: -13 },
    ];
    const points = [...way(start, corner, (i) => i / 59.38), ...way(corner, end, (i) => (i + 0.65) / 59.65)];
    const { chain } = fitPoints(points);
    expect(chain).toHaveLength(2);
    expect(Math.hypot(chain[0]!.x1 - corner.x, chain[0]!.y1 - corner.y)).toBeLessThan(0.001);
  });

  it('keeps the corner at the shoulder though no point lies on it, and is smooth everywhere else', () => {
    const { chain } = fitPoints(scanOf(ogee, 4999, 0.001), 0.01);
    const joints = chain.slice(1).map((c, i) => ({ angle: cornerAngle(chain[i]!, c), x: c.x0, y: c.y0 }));
    const corners = joints.filter(({ angle }) => angle > 0.01);
    expect(corners).toHaveLength(1);
    expect(Math.hypot(corners[0]!.x - 38, corners[0]!.y - 1.5)).toBeLessThan(0.01);
  });

  it('of 5,000 points takes under 200 ms', () => {
    const points = scanOf(ogee, 5000, 0.002);
    fitPoints(points, 0.01);
    expect(leastProcessorTime(() => fitPoints(points, 0.01), 200)).toBeLessThan(200);
  });

  it('of two points is a line, of repeats of one nothing', () => {
    expect(
      fitPoints([
        { x: 0, y: 0 },
        { x: 3, y: 4 },
      ]).chain,
    ).toMatchObject([{ x0: 0, y0: 0, x1: 3, y1: 4, turn: 0 }]);
    expect(
      fitPoints([
        { x: 1, y: 1 },
        { x: 1, y: 1 },
      ]),
    ).toEqual({ chain: [], deviation: 0 });
    expect(fitPoints([])).toEqual({ chain: [], deviation: 0 });
  });

  it('that is straight but for its scatter is one line', () => {
    const points = Array.from({ length: 500 }, (_, i) => ({ x: i / 10, y: i / 30 + (i % 2) * 0.004 }));
    const { chain, deviation } = fitPoints(points);
    expect(chain).toHaveLength(1);
    expect(deviation).toBeLessThanOrEqual(0.01);
  });

  it('refuses a tolerance of nothing', () => {
    expect(() => fitPoints([], -1)).toThrow('the tolerance must be above 0 mm, got -1');
  });
});
