import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Chain } from '../../packages/geometry/src/curve/curve.ts';
import { headingAtEnd } from '../../packages/geometry/src/curve/heading.ts';
import type { Point } from '../../packages/geometry/src/curve/point.ts';
import { fitTrack } from '../../packages/geometry/src/fit/arc-spans.ts';
import { joinTangents, leaveHeading } from '../../packages/geometry/src/fit/biarc.ts';
import { fitArcs, type SmoothCurve } from '../../packages/geometry/src/fit/fit-arcs.ts';
import { fitBezier } from '../../packages/geometry/src/fit/fit-bezier.ts';
import { between, direction, farthest } from '../support/measured-chain.ts';

function greatestKink(chain: Chain): number {
  return chain.slice(1).reduce((most, c, k) => Math.max(most, between(direction(chain[k]!, 1), direction(c, 0))), 0);
}

function cubicAt([p, q, r, s]: readonly Point[], u: number): Point {
  const mix = (k: 'x' | 'y') =>
    (1 - u) ** 3 * p![k] + 3 * (1 - u) ** 2 * u * q![k] + 3 * (1 - u) * u * u * r![k] + u ** 3 * s![k];
  return { x: mix('x'), y: mix('y') };
}

const sCurve: Point[] = [
  { x: 0, y: 0 },
  { x: 20, y: 0 },
  { x: 10, y: 9 },
  { x: 30, y: 9 },
];

describe('joinTangents', () => {
  it('draws a quarter circle as one arc', () => {
    const [only, ...rest] = joinTangents({ x: 0, y: 0, dx: 1, dy: 0 }, { x: 10, y: 10, dx: 0, dy: 1 });
    expect(rest).toEqual([]);
    expect(only).toMatchObject({ cx: 0, cy: 10, r: 10, turn: 1 });
  });

  it('draws a line between ends that lie on each other’s tangent', () => {
    const chain = joinTangents({ x: 0, y: 0, dx: 3, dy: 4 }, { x: 3, y: 4, dx: 6, dy: 8 });
    expect(chain).toEqual([{ x0: 0, y0: 0, x1: 3, y1: 4, cx: 0, cy: 0, r: 0, turn: 0 }]);
  });

  it('draws the symmetric ogee: two quarter circles that meet half way', () => {
    const chain = joinTangents({ x: 0, y: 0, dx: 1, dy: 0 }, { x: 20, y: 20, dx: 1, dy: 0 });
    expect(chain.map((c) => [c.turn, c.x1, c.y1])).toEqual([
      [1, 10, 10],
      [-1, 20, 20],
    ]);
    for (const c of chain) expect(c.r).toBeCloseTo(10, 12);
  });

  it('has no pair for directions that both point straight back along the chord', () => {
    expect(joinTangents({ x: 0, y: 0, dx: -1, dy: 0 }, { x: 10, y: 0, dx: -1, dy: 0 })).toEqual([]);
    expect(joinTangents({ x: 1, y: 1, dx: 1, dy: 0 }, { x: 1, y: 1, dx: 0, dy: 1 })).toEqual([]);
  });
});

describe('fitArcs', () => {
  it('gives a line one line and a circle one arc', () => {
    const straight = fitArcs((u) => ({ x: 10 * u, y: 4 * u, dx: 10, dy: 4 }));
    expect(straight.chain.map((c) => c.turn)).toEqual([0]);
    const round = fitArcs((u) => ({
      x: 10 * Math.cos(2 * u),
      y: 10 * Math.sin(2 * u),
      dx: -Math.sin(2 * u),
      dy: Math.cos(2 * u),
    }));
    expect(round.chain).toHaveLength(1);
    expect(round.chain[0]!.r).toBeCloseTo(10, 12);
    expect(round.deviation).toBeLessThan(1e-12);
  });

  it('shares out what a short last span leaves of the tolerance among all of them', () => {
    // A parabola 40 long and 10 high: full spans of 0.005 mm would leave the last one short, and the others at all but 0.005.
    const at = (u: number) => ({ x: 40 * u, y: 10 * u * u, dx: 40, dy: 20 * u });
    const { chain } = fitArcs(at);
    expect(chain.length).toBeLessThanOrEqual(4);
    const away = Array.from({ length: 401 }, (_, i) => at(i / 400)).map(({ x, y }) => farthest([[x, y]], chain));
    expect(Math.max(...away)).toBeLessThan(0.0042);
  });

  it('fits a full turn, whose ends coincide', () => {
    const fit = fitArcs((u) => ({
      x: 8 * Math.cos(2 * Math.PI * u),
      y: 5 * Math.sin(2 * Math.PI * u),
      dx: -8 * Math.sin(2 * Math.PI * u),
      dy: 5 * Math.cos(2 * Math.PI * u),
    }));
    expect(fit.deviation).toBeLessThanOrEqual(0.005);
    expect(fit.chain.length).toBeGreaterThan(4);
  });

  it('gives a curve of no length no pieces, and refuses a tolerance of 0', () => {
    expect(fitArcs(() => ({ x: 3, y: 2, dx: 1, dy: 0 }))).toEqual({ chain: [], deviation: 0 });
    expect(() => fitArcs((u) => ({ x: u, y: 0, dx: 1, dy: 0 }), 0)).toThrow(
      new RangeError('the tolerance must be above 0 mm, got 0'),
    );
  });

  it.each([
    ['level', 1, 0],
    ['plumb', 0, 1],
    ['sloping', 1, 1],
  ])('draws the shortest spans of a %s track as lines where no pair of arcs is', (_, x, y) => {
    // No pair of arcs has both ends point back along its chord, however short it is.
    const { chain } = fitTrack(
      {
        at: (u) => ({ x: x * u, y: y * u, dx: -x, dy: -y }),
        leastSpan: 0.01,
        tryOut: (_from, _to, arcs) => (arcs.length === 0 ? Number.POSITIVE_INFINITY : 0),
        measure: () => 0,
      },
      0.005,
    );
    expect(chain.length).toBeGreaterThan(100);
    expect(chain.every(({ turn }) => turn === 0)).toBe(true);
    expect(chain.slice(1).every((c, k) => c.x0 === chain[k]!.x1 && c.y0 === chain[k]!.y1)).toBe(true);
    expect(chain.at(-1)).toMatchObject({ x1: x, y1: y });
  });

  it('uses no more pairs of arcs than an exhaustive search over 240 joints needs', () => {
    const curve: SmoothCurve = (u) => ({ x: 40 * u, y: 3 * Math.sin(4 * u), dx: 40, dy: 12 * Math.cos(4 * u) });
    const joints = 240;
    const holds = (i: number, k: number): boolean => {
      const chain = joinTangents(curve(i / joints), curve(k / joints));
      for (let n = 1; n < 60; n++) {
        const p = curve((i + ((k - i) * n) / 60) / joints);
        if (farthest([[p.x, p.y]], chain) > 0.005) return false;
      }
      return true;
    };
    const fewest = [0];
    for (let k = 1; k <= joints; k++) {
      fewest[k] = Number.POSITIVE_INFINITY;
      for (let i = Math.max(0, k - 120); i < k; i++) {
        if (fewest[i]! + 1 < fewest[k]! && holds(i, k)) fewest[k] = fewest[i]! + 1;
      }
    }
    const fit = fitArcs(curve);
    expect(Math.ceil(fit.chain.length / 2)).toBeLessThanOrEqual(fewest[joints]!);
    expect(fewest[joints]).toBeGreaterThan(2);
  });
});

describe('fitBezier', () => {
  it('fits an ogee within 0.005 mm in 13 pieces, smooth throughout', () => {
    const fit = fitBezier(sCurve);
    expect(fit.chain).toHaveLength(13);
    expect(fit.deviation).toBeLessThanOrEqual(0.005);
    expect(greatestKink(fit.chain)).toBeLessThan(1e-9);
  });

  it('reads a quadratic as the cubic it is', () => {
    const [p, q, r] = [
      { x: 0, y: 0 },
      { x: 10, y: 10 },
      { x: 20, y: 0 },
    ];
    const fit = fitBezier([p, q, r]);
    const top = farthest([[10, 5]], fit.chain);
    expect(top).toBeLessThan(0.005);
    expect(fit.chain.at(-1)).toMatchObject({ x1: 20, y1: 0 });
  });

  it('draws straight ones as lines, there and back where they double back', () => {
    const on = (xs: number[]): Point[] => xs.map((x) => ({ x, y: 2 * x }));
    expect(fitBezier(on([0, 5, 10])).chain.map((c) => [c.turn, c.x1, c.y1])).toEqual([[0, 10, 20]]);
    expect(fitBezier(on([1, 1, 1, 1])).chain).toEqual([]);
    const back = fitBezier(on([0, 15, -5, 10])).chain;
    // Speed 3·(15 − 70u + 70u²) vanishes at u = 1/2 ± √(1/4 − 3/14).
    const turn = 0.5 - Math.sqrt(1 / 4 - 3 / 14);
    const far = cubicAt(on([0, 15, -5, 10]), turn).x;
    expect(back.map((c) => c.x1)).toEqual([expect.closeTo(far, 9), expect.closeTo(10 - far, 9), 10]);
  });

  it('holds near a cusp and through a loop', () => {
    const cusp = fitBezier([
      { x: 0, y: 0 },
      { x: 20, y: 20 },
      { x: 0, y: 20 },
      { x: 20, y: 0 },
    ]);
    expect(cusp.deviation).toBeLessThanOrEqual(0.005);
    expect(cusp.chain.length).toBeLessThan(60);
  });

  it('refuses two points and five', () => {
    expect(() => fitBezier(sCurve.slice(0, 2))).toThrow('a Bézier curve has 3 or 4 control points, got 2');
    expect(() => fitBezier([...sCurve, { x: 0, y: 0 }])).toThrow(RangeError);
  });

  it('holds its tolerance on any curve, measured apart from the fitter, and keeps its ends', () => {
    const coordinate = fc.integer({ min: -4000, max: 4000 }).map((k) => k / 100);
    const point = fc.record({ x: coordinate, y: coordinate });
    const tolerances = fc.constantFrom(0.05, 0.005, 0.001);
    fc.assert(
      fc.property(fc.tuple(point, point, point, point), tolerances, (points, tolerance) => {
        fc.pre(points.some((p) => p.x !== points[0].x || p.y !== points[0].y));
        const { chain, deviation } = fitBezier(points, tolerance);
        expect(deviation).toBeLessThanOrEqual(tolerance);
        let measured = 0;
        for (let i = 0; i <= 300; i++) {
          const p = cubicAt(points, i / 300);
          measured = Math.max(measured, farthest([[p.x, p.y]], chain));
        }
        expect(measured).toBeLessThanOrEqual(1.02 * deviation + 1e-9);
        const [start, end] = [chain[0]!, chain.at(-1)!];
        expect(Math.hypot(start.x0 - points[0].x, start.y0 - points[0].y)).toBeLessThan(1e-9);
        expect(Math.hypot(end.x1 - points[3].x, end.y1 - points[3].y)).toBeLessThan(1e-9);
        expect(greatestKink(chain)).toBeLessThan(1e-6);
      }),
      { numRuns: 60, seed: 7 },
    );
  });
});

describe('an arc that leaves in a direction', () => {
  const from = { x: 1, y: 2, dx: 3, dy: 4 };

  it.each([
    ['straight on, as a line', { x: 4, y: 6 }, 0],
    ['to the left', { x: 0, y: 9 }, 1],
    ['to the right', { x: 7, y: 3 }, -1],
  ] as const)('%s, starts in it, ends at its end, and is told its heading there', (_, to, turn) => {
    const c = leaveHeading(from, { ...to, dx: 0, dy: 0 });
    expect(c.turn).toBe(turn);
    expect([c.x1, c.y1]).toEqual([to.x, to.y]);
    expect(direction(c, 0)).toEqual([expect.closeTo(0.6, 12), expect.closeTo(0.8, 12)]);
    const { x, y, dx, dy } = headingAtEnd(c);
    const [endX, endY] = direction(c, 1);
    const length = Math.hypot(dx, dy);
    expect([x, y]).toEqual([to.x, to.y]);
    expect([dx / length, dy / length]).toEqual([expect.closeTo(endX, 12), expect.closeTo(endY, 12)]);
  });
});

it('between two corners one arc is taken where it holds, wherever the curve lies', () => {
  // A parabola of radius 100 at its foot: over 20 mm an arc through both its ends leaves it by 0.002 mm, one
  // that keeps the heading at an end by 0.005.
  const parabola: SmoothCurve = (u) => ({ x: 100 + 20 * u, y: 50 + (20 * u) ** 2 / 200, dx: 20, dy: 4 * u });
  const { chain, deviation } = fitArcs(parabola, 0.003, { start: true, end: true });
  expect(chain).toHaveLength(1);
  expect(deviation).toBeLessThanOrEqual(0.003);
  expect(fitArcs(parabola, 0.003, { start: false, end: false }).chain.length).toBeGreaterThan(1);
});
