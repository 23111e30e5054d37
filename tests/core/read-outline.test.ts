import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readOutline } from '../../packages/core/src/profile/read-outline.ts';
import { type Chain, line } from '../../packages/geometry/src/curve/curve.ts';
import { chainExtent, curveBox } from '../../packages/geometry/src/index.ts';
import { findSelfCrossing } from '../../packages/geometry/src/loop/self-crossing.ts';
import { processorTime } from '../support/timing.ts';

function chainOf(path: string, units: 'mm' | 'in' = 'mm'): Chain {
  const outline = readOutline(path, units);
  if ('sentence' in outline) throw new Error(outline.sentence);
  return outline.chain;
}

/** Ends of the pieces, for chains of lines. */
function cornersOf(chain: Chain): number[][] {
  return [[chain[0]!.x0, chain[0]!.y0], ...chain.map((c) => [c.x1, c.y1])];
}

/** Points along a chain, arcs by angle: an arc's points are worked out from its centre alone. */
function pointsOf(chain: Chain, each = 50): { x: number; y: number }[] {
  return chain.flatMap((c) =>
    Array.from({ length: each + 1 }, (_, k) => {
      const u = k / each;
      if (c.turn === 0) return { x: c.x0 + u * (c.x1 - c.x0), y: c.y0 + u * (c.y1 - c.y0) };
      const from = Math.atan2(c.y0 - c.cy, c.x0 - c.cx);
      let turned = Math.atan2(c.y1 - c.cy, c.x1 - c.cx) - from;
      if (turned * c.turn < 0) turned += 2 * Math.PI * c.turn;
      return { x: c.cx + c.r * Math.cos(from + u * turned), y: c.cy + c.r * Math.sin(from + u * turned) };
    }),
  );
}

describe('readOutline', () => {
  it.each([
    ['M 0 9 H 12 L 30 2 V 0'],
    ['m0,9h12l18-7v-2'],
    ['M 0 9 L 12 9 30 2 30 0'],
    ['M 0 9 H 12 L 30 2 V 0 H 0 Z'],
    ['M 0 9 H 12 L 30 2 V 0 H 0 V 9 Z'],
    ['M 0 0 V 9 H 12 L 30 2 V 0 Z'],
    ['M 0 9 H 12 L 30 2 V 0 H 60'],
    ['M -4 9 H 0 H 12 L 30 2 V 0'],
    ['M 0 9 L 12 9 L 12 9 H 12 L 30 2 v 0 V 0'],
  ])('reads the same four corners from %s', (path) => {
    expect(cornersOf(chainOf(path))).toEqual([
      [0, 9],
      [12, 9],
      [30, 2],
      [30, 0],
    ]);
  });

  it('reads path data in the unit of the file', () => {
    expect(cornersOf(chainOf('M 0 0.25 H 0.5 V 0', 'in'))).toEqual([
      [0, 6.35],
      [12.7, 6.35],
      [12.7, 0],
    ]);
  });

  it('keeps a circular arc exactly: a quarter of radius 6 hollowed towards the face', () => {
    const [, arc] = chainOf('M 0 9 H 10 A 6 6 0 0 0 16 3 V 0');
    expect(arc).toMatchObject({ x0: 10, y0: 9, x1: 16, y1: 3, r: 6, turn: -1 });
    expect([arc!.cx, arc!.cy]).toEqual([expect.closeTo(10, 12), expect.closeTo(3, 12)]);
  });

  it('tells the two sweeps and the large arc apart', () => {
    const centre = (flags: string) => {
      const arc = chainOf(`M 0 9 H 10 A 10 10 0 ${flags} 20 9 V 0`)[1]!;
      return [arc.cx, arc.cy, arc.turn];
    };
    const h = Math.sqrt(75);
    expect(centre('0 1')).toEqual([15, expect.closeTo(9 + h, 10), 1]);
    expect(centre('0 0')).toEqual([15, expect.closeTo(9 - h, 10), -1]);
    expect(centre('1 1')).toEqual([15, expect.closeTo(9 - h, 10), 1]);
  });

  it('widens a radius too small to span its ends, as SVG does, to a half circle', () => {
    const [arc] = chainOf('M 0 9 A 1 1 0 0 1 30 0');
    expect(arc).toMatchObject({ cx: 15, cy: 4.5 });
    expect(arc!.r).toBeCloseTo(Math.hypot(15, 4.5), 12);
  });

  it('reads an arc of no radius, and one flatter than can be told, as a line', () => {
    expect(chainOf('M 0 9 A 0 5 0 0 1 30 0')).toEqual([line(0, 9, 30, 0)]);
    expect(chainOf('M 0 9 A 1e12 1e12 0 0 1 30 0')).toEqual([line(0, 9, 30, 0)]);
    expect(chainOf('M 0 9 A 1e5 1e5 0 0 1 30 0')[0]!.turn).toBe(1);
  });

  it('fits a cubic, a quadratic and their smooth followers within 0.005 mm, without gaps', () => {
    const chain = chainOf('M 0 9 C 10 9 12 6 16 6 S 20 4 24 4 Q 28 4 28 2 T 32 0');
    const cubic = (p: number[][]) => (u: number) => {
      const w = [(1 - u) ** 3, 3 * (1 - u) ** 2 * u, 3 * (1 - u) * u * u, u ** 3];
      return { x: w.reduce((sum, k, i) => sum + k * p[i]![0]!, 0), y: w.reduce((sum, k, i) => sum + k * p[i]![1]!, 0) };
    };
    const curves = [
      cubic([
        [0, 9],
        [10, 9],
        [12, 6],
        [16, 6],
      ]),
      cubic([
        [16, 6],
        [20, 6],
        [20, 4],
        [24, 4],
      ]),
    ];
    const points = pointsOf(chain, 400);
    for (const curve of curves)
      for (let u = 0; u <= 1; u += 1 / 64) {
        const { x, y } = curve(u);
        expect(Math.min(...points.map((p) => Math.hypot(p.x - x, p.y - y)))).toBeLessThan(0.009);
      }
    chain.slice(1).forEach((c, i) => {
      expect([c.x0, c.y0]).toEqual([chain[i]!.x1, chain[i]!.y1]);
    });
  });

  it('fits an elliptical arc within 0.005 mm of its ellipse', () => {
    // A quarter ellipse about (30, 9) with half axes 30 and 9: from the edge at (0, 9) to the face at (30, 0).
    const chain = chainOf('M 0 9 A 30 9 0 0 1 30 0');
    for (const { x, y } of pointsOf(chain, 20)) {
      // Distance to the ellipse to first order: the implicit value over the length of its gradient.
      const [u, v] = [(x - 30) / 30, (y - 9) / 9];
      const off = (u * u + v * v - 1) / (2 * Math.hypot(u / 30, v / 9));
      expect(Math.abs(off)).toBeLessThan(0.0051);
    }
    expect(chain.at(-1)).toMatchObject({ x1: 30, y1: 0 });
    expect(chain[0]).toMatchObject({ x0: 0, y0: 9 });
  });

  it('reads an outline that doubles back, overhangs or retraces itself', () => {
    expect(chainOf('M 0 9 H 8 L 4 5 L 8 1 V 0')).toHaveLength(4);
    expect(chainOf('M 0 9 H 20 H 10 H 30 V 0')).toHaveLength(4);
    expect(chainOf('M 0 9 H 20 A 3 3 0 1 0 24 7 V 0')).toHaveLength(3);
  });

  it('finds a crossing of two arcs where they cross', () => {
    // Circles of radius 5 about (5, 5) and (11, 5): they meet at x = 8, 4 above and below the line of centres.
    const outline = readOutline('M 0 5 A 5 5 0 1 1 5 10 L 14 13 L 14 9 A 5 5 0 1 1 14 1 L 20 0', 'mm');
    expect(outline).toMatchObject({ sentence: 'fault.outline-crosses-itself', figures: { x: expect.closeTo(8, 9) } });
    const { y } = (outline as unknown as { figures: { y: number } }).figures;
    expect(Math.min(Math.abs(y - 1), Math.abs(y - 9))).toBeLessThan(1e-9);
  });

  it('refuses a letter that some programs add to path data', () => {
    expect(readOutline('M 0 9 H 11 r 30 4 33 2 V 0', 'mm')).toMatchObject({
      sentence: 'fault.outline-unreadable',
      figures: { rest: 'r 30 4 33 2 V 0' },
    });
  });

  it('gives extents that hold every point and touch the outermost', () => {
    const flags = fc.constantFrom('0 0', '0 1', '1 0', '1 1');
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: 0, max: 8 }),
        fc.integer({ min: 1, max: 60 }),
        flags,
        (x, y, r, f) => {
          const outline = readOutline(`M 0 9 A ${r} ${r} 0 ${f} ${x} ${y}`, 'mm');
          if ('sentence' in outline) return;
          const points = pointsOf(outline.chain, 2000);
          const { reach, depth } = chainExtent(outline.chain);
          expect(reach).toBeCloseTo(Math.max(...points.map((p) => p.x)), 3);
          expect(depth).toBeCloseTo(Math.max(...points.map((p) => p.y)), 3);
          const box = curveBox(outline.chain[0]!);
          expect(box.x0).toBeCloseTo(Math.min(...points.map((p) => p.x)), 3);
          expect(box.y0).toBeCloseTo(Math.min(...points.map((p) => p.y)), 3);
        },
      ),
    );
  });
});

describe('findSelfCrossing', () => {
  it('agrees with trying every pair, on random zigzags', () => {
    const coordinate = fc.integer({ min: 0, max: 30 });
    let crossed = 0;
    fc.assert(
      fc.property(fc.array(fc.tuple(coordinate, coordinate), { minLength: 3, maxLength: 9 }), (corners) => {
        const chain = corners
          .slice(1)
          .map(([x, y], i) =>
            line(
              corners[i]![0] + i * 1e-3,
              corners[i]![1] + (i % 3) * 1e-4,
              x + (i + 1) * 1e-3,
              y + ((i + 1) % 3) * 1e-4,
            ),
          );
        const pairs = chain.flatMap((p, i) => chain.slice(i + 2).map((q) => properCrossing(p, q)));
        const expected = pairs.some(Boolean);
        if (expected) crossed++;
        expect(findSelfCrossing(chain) !== null).toBe(expected);
      }),
      { numRuns: 500, seed: 11 },
    );
    expect(crossed).toBeGreaterThan(100);
  });

  it('searches 100 000 pieces in well under a second', () => {
    const n = 100_000;
    const comb = Array.from({ length: n }, (_, i) =>
      line(i % 2 ? 30 : 0, 9 - (9 * i) / n, i % 2 ? 0 : 30, 9 - (9 * (i + 1)) / n),
    );
    expect(processorTime(() => expect(findSelfCrossing(comb)).toBeNull())).toBeLessThan(1000);
  });

  it('gives up on a tangle rather than search for ever', () => {
    const n = 20_000;
    // There and back side by side: every box lies over every other, and none is crossed.
    const slanted = Array.from({ length: n / 2 }, (_, i) => {
      const [off, next] = [i / 1024, (i + 1) / 1024];
      return i % 2
        ? [line(off, 30 + off, 30 + off, off), line(30 + off, off, 30 + next, next)]
        : [line(30 + off, off, off, 30 + off), line(off, 30 + off, next, 30 + next)];
    }).flat();
    expect(findSelfCrossing(slanted)).toBe('tangled');
  });
});

/** Whether two lines cross strictly within both, by the signs of the four turns. */
function properCrossing(p: Chain[number], q: Chain[number]): boolean {
  const turn = (c: Chain[number], x: number, y: number) =>
    Math.sign((c.x1 - c.x0) * (y - c.y0) - (c.y1 - c.y0) * (x - c.x0));
  return turn(p, q.x0, q.y0) * turn(p, q.x1, q.y1) < 0 && turn(q, p.x0, p.y0) * turn(q, p.x1, p.y1) < 0;
}
