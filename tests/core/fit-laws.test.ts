// Laws of fitted arcs, judged by points along curves and arcs worked out here: what a biarc is, how far a fit really lies from its
// curve, and what becomes of scans whose corners and ends are known.
import { describe, expect, it } from 'vitest';
import { fitTrack } from '../../packages/geometry/src/fit/arc-spans.ts';
import { joinTangents } from '../../packages/geometry/src/fit/biarc.ts';
import { fitArcs, type SmoothCurve } from '../../packages/geometry/src/fit/fit-arcs.ts';
import { fitBezier } from '../../packages/geometry/src/fit/fit-bezier.ts';
import { fitPoints } from '../../packages/geometry/src/fit/fit-points.ts';
import { findPeak } from '../../packages/geometry/src/fit/peak.ts';
import { splitAtCorners } from '../../packages/geometry/src/fit/scan-corners.ts';
import { measureAlong } from '../../packages/geometry/src/fit/scan-headings.ts';
import type { Track } from '../../packages/geometry/src/fit/track.ts';
import { svgArc } from '../../packages/geometry/src/path/svg-arc.ts';
import type { XY } from '../support/drawn-curves.ts';
import { between, direction, farthest, lengthOf } from '../support/measured-chain.ts';
import { Random } from '../support/random.ts';

it('a pair of arcs leaves one heading, arrives in another, and bends nowhere between, whichever way they lie', () => {
  const random = new Random(1);
  for (let n = 0; n < 200; n++) {
    const [x, y, length, way] = [30, 40, random.between(2, 20), random.between(-3.1, 3.1)];
    const [out, into] = [way + random.between(-1.3, 1.3), way + random.between(-1.3, 1.3)];
    const from = { x, y, dx: 3 * Math.cos(out), dy: 3 * Math.sin(out) };
    const to = { x: x + length * Math.cos(way), y: y + length * Math.sin(way), dx: Math.cos(into), dy: Math.sin(into) };
    const chain = joinTangents(from, to);
    const [first, last] = [chain[0]!, chain.at(-1)!];
    expect(chain.length).toBeLessThan(3);
    expect([first.x0, first.y0, last.x1, last.y1]).toEqual([from.x, from.y, to.x, to.y]);
    expect(between(direction(first, 0), [Math.cos(out), Math.sin(out)])).toBeLessThan(1e-6);
    expect(between(direction(last, 1), [Math.cos(into), Math.sin(into)])).toBeLessThan(1e-6);
    expect(between(direction(first, 1), direction(last, chain.length === 1 ? 1 : 0))).toBeLessThan(
      chain.length === 1 ? 3.2 : 1e-6,
    );
    for (const c of chain) if (c.turn !== 0) expect(Math.hypot(c.x1 - c.cx, c.y1 - c.cy)).toBeCloseTo(c.r, 6);
  }
});

describe('a fit to 0.005 mm', () => {
  /** A wave, a spiral and a parabola, turned; corners at their ends or none. */
  const curves: [string, (u: number) => XY][] = [
    ['a wave', (u) => [30 + 40 * u, 40 + 3 * Math.sin(5 * u)]],
    ['a spiral', (u) => [(4 + 9 * u) * Math.cos(4 * u), (4 + 9 * u) * Math.sin(4 * u)]],
    ['a parabola', (u) => [30 + 12 * u * u, 40 - 25 * u]],
    ['a flat bow', (u) => [30 + 20 * u, 40 + 0.4 * u * (1 - u)]],
  ];
  const corners = [
    [false, false],
    [true, false],
    [false, true],
    [true, true],
  ] as const;
  it.each(curves)(
    'of %s lies as far from it as it says, hangs together, and keeps its ends and their headings',
    (_, at) => {
      const curve: SmoothCurve = (u) => {
        const [[x, y], [ax, ay], [bx, by]] = [at(u), at(u - 1e-6), at(u + 1e-6)];
        return { x, y, dx: (bx - ax) / 2e-6, dy: (by - ay) / 2e-6 };
      };
      const points = Array.from({ length: 1201 }, (_, k) => at(k / 1200));
      for (const [start, end] of corners) {
        const { chain, deviation } = fitArcs(curve, 0.005, { start, end });
        const real = farthest(points, chain);
        expect(deviation).toBeLessThanOrEqual(0.005);
        expect(real).toBeLessThan(1.001 * deviation + 1e-7);
        expect(real).toBeGreaterThan(0.95 * deviation - 1e-7);
        expect(Math.hypot(chain[0]!.x0 - at(0)[0], chain[0]!.y0 - at(0)[1])).toBeLessThan(1e-9);
        expect(Math.hypot(chain.at(-1)!.x1 - at(1)[0], chain.at(-1)!.y1 - at(1)[1])).toBeLessThan(1e-9);
        const heading = (u: number): XY => [curve(u).dx, curve(u).dy];
        if (!start) expect(between(direction(chain[0]!, 0), heading(0))).toBeLessThan(1e-5);
        if (!end) expect(between(direction(chain.at(-1)!, 1), heading(1))).toBeLessThan(1e-5);
        for (const [k, c] of chain.slice(1).entries()) {
          expect([c.x0, c.y0]).toEqual([expect.closeTo(chain[k]!.x1, 9), expect.closeTo(chain[k]!.y1, 9)]);
          expect(between(direction(chain[k]!, 1), direction(c, 0))).toBeLessThan(1e-5);
        }
      }
    },
  );

  it('of a curve with corners at its ends takes no more arcs than of one without', () => {
    for (const [, at] of curves) {
      const curve: SmoothCurve = (u) => {
        const [[x, y], [ax, ay], [bx, by]] = [at(u), at(u - 1e-6), at(u + 1e-6)];
        return { x, y, dx: bx - ax, dy: by - ay };
      };
      const count = (start: boolean, end: boolean) => fitArcs(curve, 0.005, { start, end }).chain.length;
      const smooth = count(false, false);
      expect(count(true, false)).toBeLessThanOrEqual(smooth);
      expect(count(false, true)).toBeLessThanOrEqual(smooth);
      expect(count(true, true)).toBeLessThanOrEqual(smooth);
    }
  });

  it.each([
    ['a wave', 13],
    ['a spiral', 11],
    ['a parabola', 6],
  ])('of %s takes at most %i pieces', (name, pieces) => {
    const at = curves.find(([called]) => called === name)![1];
    const { chain } = fitArcs((u) => {
      const [[x, y], [ax, ay], [bx, by]] = [at(u), at(u - 1e-6), at(u + 1e-6)];
      return { x, y, dx: (bx - ax) / 2e-6, dy: (by - ay) / 2e-6 };
    });
    expect(chain.length).toBeLessThanOrEqual(pieces);
  });

  it('of random Bézier curves lies as far from them as it says', () => {
    const random = new Random(2);
    for (let n = 0; n < 30; n++) {
      const points = Array.from({ length: n % 3 === 0 ? 3 : 4 }, () => ({
        x: random.between(20, 50),
        y: random.between(25, 60),
      }));
      const { chain, deviation } = fitBezier(points, 0.01);
      // De Casteljau: between neighbours, again and again.
      const at = (u: number): XY => {
        let row = points;
        while (row.length > 1)
          row = row
            .slice(1)
            .map((q, k) => ({ x: row[k]!.x + u * (q.x - row[k]!.x), y: row[k]!.y + u * (q.y - row[k]!.y) }));
        return [row[0]!.x, row[0]!.y];
      };
      const real = farthest(
        Array.from({ length: 401 }, (_, k) => at(k / 400)),
        chain,
      );
      expect(real).toBeLessThan(1.02 * deviation + 1e-9);
      expect(deviation).toBeLessThanOrEqual(0.01);
      expect(chain.length).toBeLessThan(80);
    }
  });
});

describe('on a track whose arcs are off by exactly the cube of their span', () => {
  /** A parabola, whose pairs of arcs are said to be off by `error` times the cube of their span; `tried` counts how often that is asked. */
  const cubeTrack = (error: (from: number) => number) => {
    const counted = { tried: 0 };
    const off = (from: number, to: number) => error(from) * (to - from) ** 3;
    const track: Track = {
      at: (u) => ({ x: 40 * u, y: 10 * u * u, dx: 40, dy: 20 * u }),
      tryOut: (from, to) => {
        counted.tried++;
        return off(from, to);
      },
      measure: off,
      leastSpan: 1e-6,
    };
    return { track, counted };
  };

  it.each([10, 20, 40])(
    '%i spans, the last of them half as long as the others, are made as long as one another',
    (spans) => {
      const error = 0.005 * (spans - 0.5) ** 3;
      const { track } = cubeTrack(() => error);
      // No end in three arcs holds, so that the last span stays a pair.
      const tryOut: Track['tryOut'] = (from, to, arcs) => (arcs.length === 1 ? Infinity : track.tryOut(from, to, arcs));
      const { chain, deviation } = fitTrack({ ...track, tryOut }, 0.005);
      expect(Math.ceil(chain.length / 2)).toBe(spans);
      expect(deviation).toBeLessThan((1.03 * error) / spans ** 3);
    },
  );

  it.each([
    [40, 215],
    [2000, 1310],
  ])('that grows along it the ends of spans are found in few trials: at %i mm in %i', (error, most) => {
    // A tenth more than the search takes. One that guesses the first end worse, or the next, takes a fifth more at least.
    const { track, counted } = cubeTrack((from) => error * (1 + from));
    fitTrack(track, 0.005);
    expect(counted.tried).toBeLessThanOrEqual(most);
  });
});

it('a Bézier curve whose control points coincide at its ends starts and arrives as it does next to them', () => {
  const [p, r, s] = [
    { x: 30, y: 40 },
    { x: 42, y: 45 },
    { x: 50, y: 38 },
  ];
  const start = fitBezier([p, p, r, s]).chain[0]!;
  expect(between(direction(start, 0), [12, 5])).toBeLessThan(1e-3);
  const end = fitBezier([p, r, s, s]).chain.at(-1)!;
  expect(between(direction(end, 1), [8, -7])).toBeLessThan(1e-3);
});

describe('the arc of a path', () => {
  /** Distance from an ellipse, along its gradient: exact enough next to it. */
  const offEllipse = (x: number, y: number, rx: number, ry: number) => {
    const level = (x / rx) ** 2 + (y / ry) ** 2 - 1;
    return Math.abs(level) / Math.hypot((2 * x) / rx ** 2, (2 * y) / ry ** 2);
  };
  it('lies on its ellipse, between its ends, the long or the short way, the way round that it is told', () => {
    const random = new Random(3);
    for (let n = 0; n < 60; n++) {
      const [rx, ry, tilt] =
        n % 4 === 0 ? [7, 7, 20] : [random.between(4, 15), random.between(4, 15), random.between(-90, 90)];
      const [cos, sin] = [Math.cos((tilt * Math.PI) / 180), Math.sin((tilt * Math.PI) / 180)];
      const sweep = random.between(0.3, 5.9) * random.oneOf([-1, 1]);
      const start = random.between(-3, 3);
      const place = (angle: number): XY => {
        const [u, v] = [rx * Math.cos(angle), ry * Math.sin(angle)];
        return [30 + u * cos - v * sin, 40 + u * sin + v * cos];
      };
      const [from, to] = [place(start), place(start + sweep)];
      if (Math.abs(Math.abs(sweep) - Math.PI) < 0.05) continue;
      const chain = svgArc(...from, ...to, { rx, ry, tilt, large: Math.abs(sweep) > Math.PI, sweep: sweep > 0 });
      expect([chain[0]!.x0, chain[0]!.y0, chain.at(-1)!.x1, chain.at(-1)!.y1]).toEqual([...from, ...to]);
      const points = Array.from({ length: 201 }, (_, k) => place(start + (k / 200) * sweep));
      expect(farthest(points, chain)).toBeLessThan(0.0055);
      for (const c of chain) {
        const [x, y] = [(c.x1 - 30) * cos + (c.y1 - 40) * sin, (c.y1 - 40) * cos - (c.x1 - 30) * sin];
        expect(offEllipse(x, y, rx, ry)).toBeLessThan(0.006);
        expect(c.turn).toBe(sweep > 0 ? 1 : -1);
      }
      if (rx === ry) expect(chain).toHaveLength(1);
      // No longer than the way along those points: it goes round once.
      const long = points
        .slice(1)
        .reduce((sum, [x, y], k) => sum + Math.hypot(x - points[k]![0], y - points[k]![1]), 0);
      expect(Math.abs(lengthOf(chain) - long)).toBeLessThan(0.02);
    }
  });

  it('of kilometres of radius is an arc as long as it leaves its chord, and else the chord', () => {
    // Over 1,000 mm a radius of 2 km rises 1000²/(8·2·10⁶) = 0.0625 mm; over 0.1 mm one of 10⁹ mm less than a digit of it.
    const shape = { tilt: 0, large: false, sweep: true };
    const [arc] = svgArc(0, 0, 1000, 0, { ...shape, rx: 2e6, ry: 2e6 });
    expect(arc).toMatchObject({ turn: 1, r: 2e6 });
    expect(arc!.cy - Math.sqrt(2e6 ** 2 - 500 ** 2)).toBeCloseTo(0, 6);
    expect(svgArc(0, 0, 0.1, 0, { ...shape, rx: 1e9, ry: 1e9 })).toMatchObject([{ turn: 0, x1: 0.1 }]);
  });

  it('whose radii are too small is grown until it spans its ends: half a circle, or half an ellipse', () => {
    const [half] = svgArc(10, 20, 16, 28, { rx: 1, ry: 1, tilt: 0, large: false, sweep: true });
    expect(half).toMatchObject({ cx: 13, cy: 24, r: 5, turn: 1 });
    // Twice as wide as high, level: from (10, 20) to (30, 20) it is 10 by 5 about (20, 20).
    const points = Array.from({ length: 101 }, (_, k): XY => {
      const angle = Math.PI * (1 - k / 100);
      return [20 + 10 * Math.cos(angle), 20 + 5 * Math.sin(angle)];
    });
    for (const ry of [1, 1e-3, 1e-7, 1e-10]) {
      const chain = svgArc(10, 20, 30, 20, { rx: 2 * ry, ry, tilt: 0, large: false, sweep: false });
      expect(farthest(points, chain), `from radii of ${2 * ry} and ${ry}`).toBeLessThan(0.0055);
    }
  });
});

describe('scanned points', () => {
  const way = (places: readonly XY[], step: number): { x: number; y: number }[] =>
    places.slice(1).flatMap(([x1, y1], k) => {
      const [x0, y0] = places[k]!;
      const count = Math.round(Math.hypot(x1 - x0, y1 - y0) / step);
      return Array.from({ length: count + (k === places.length - 2 ? 1 : 0) }, (_, i) => ({
        x: x0 + (i / count) * (x1 - x0),
        y: y0 + (i / count) * (y1 - y0),
      }));
    });

  it.each([1, 0.1, 0.03])('%f mm apart along three lines are three lines that meet where these do', (step) => {
    const places = [
      [5, 7],
      [8, 11],
      [14, 3],
      [17, 9],
    ] as const;
    const { chain, deviation } = fitPoints(way(places, step));
    expect(chain.map(({ turn }) => turn)).toEqual([0, 0, 0]);
    chain.forEach((c, k) => {
      expect(Math.hypot(c.x0 - places[k]![0], c.y0 - places[k]![1])).toBeLessThan(1e-6);
    });
    expect(deviation).toBeLessThan(1e-6);
  });

  it.each([
    ['fine before a corner and coarse after it', 0.1, 1],
    ['coarse before it and fine after it', 1, 0.1],
  ])('%s, none on the corner itself, are two lines that meet there', (_, before, after) => {
    // Along (3, 4)/5 up to (35, 47), then along (4, −3)/5; the nearest points lie half a step from it.
    const points = [
      ...Array.from({ length: 60 }, (_, k) => 59.5 * before - k * before).map((s) => ({
        x: 35 - 0.6 * s,
        y: 47 - 0.8 * s,
      })),
      ...Array.from({ length: 60 }, (_, k) => (k + 0.5) * after).map((s) => ({ x: 35 + 0.8 * s, y: 47 - 0.6 * s })),
    ];
    const { chain, deviation } = fitPoints(points);
    expect(chain.map(({ turn }) => turn)).toEqual([0, 0]);
    expect(Math.hypot(chain[0]!.x1 - 35, chain[0]!.y1 - 47)).toBeLessThan(1e-6);
    expect(deviation).toBeLessThan(1e-6);
  });

  it('along two lines and a small round between them keep the round', () => {
    // Up (3, 4)/5 to a round of radius 1 through a right angle, then down (4, −3)/5; a point every tenth.
    const centre: XY = [35 + 0.8, 47 - 0.6];
    const points = [
      ...Array.from({ length: 100 }, (_, k) => (100 - k) / 10).map((s) => ({ x: 35 - 0.6 * s, y: 47 - 0.8 * s })),
      ...Array.from({ length: 16 }, (_, k) => Math.atan2(0.6, -0.8) - (k / 16) * (Math.PI / 2)).map((a) => ({
        x: centre[0] + Math.cos(a),
        y: centre[1] + Math.sin(a),
      })),
      ...Array.from({ length: 100 }, (_, k) => k / 10).map((s) => ({
        x: centre[0] + 0.6 + 0.8 * s,
        y: centre[1] + 0.8 - 0.6 * s,
      })),
    ];
    const { chain, deviation } = fitPoints(points);
    expect(deviation).toBeLessThanOrEqual(0.01);
    for (const c of chain)
      for (const [x, y] of [
        [c.x0, c.y0],
        [c.x1, c.y1],
      ] as const)
        expect(Math.min(...points.map((p) => Math.hypot(p.x - x, p.y - y)))).toBeLessThan(0.06);
  });

  it('along two lines meet where these do, whatever the lines, the steps, and where next to the corner the points lie', () => {
    const random = new Random(6);
    for (let n = 0; n < 40; n++) {
      const [heading, bend] = [random.between(-3, 3), random.between(0.4, 2.4) * random.oneOf([-1, 1])];
      const [before, after] = [random.between(0.1, 1), random.between(0.1, 1)];
      // The nearest points lie on the corner itself, or up to a step away from it on either side.
      const [first, next] = [random.oneOf([0, random.between(0.02, 1)]), random.between(0.02, 1)];
      const place = (way: number, s: number) => ({ x: 35 + s * Math.cos(way), y: 47 + s * Math.sin(way) });
      const points = [
        ...Array.from({ length: 30 }, (_, k) => place(heading, -(first + 29 - k) * before)),
        ...Array.from({ length: 30 }, (_, k) => place(heading + bend, (next + k) * after)),
      ];
      const { chain, deviation } = fitPoints(points);
      expect(
        chain.map(({ turn }) => turn),
        `scan ${n}`,
      ).toEqual([0, 0]);
      expect(Math.hypot(chain[0]!.x1 - 35, chain[0]!.y1 - 47), `scan ${n}`).toBeLessThan(1e-6);
      expect(deviation).toBeLessThan(1e-6);
      // Each point goes to its own line, and the corner to both.
      const stretches = splitAtCorners(measureAlong(points), 1e-6);
      expect(
        stretches.map(({ length }) => length),
        `scan ${n}`,
      ).toEqual([first === 0 ? 30 : 31, 31]);
    }
  });

  it('fine before a corner and coarse after it bend there by more than 15° and what scatter may do, or there is no corner', () => {
    const [before, after] = [0.1, 1];
    // 96 neighbours to a side, which may scatter by 0.05 mm: 8 · 0.05 / 9.6 radians.
    const doubt = (8 * 0.05) / 9.6;
    const stretches = (bend: number) =>
      splitAtCorners(
        measureAlong([
          ...Array.from({ length: 150 }, (_, k) => ({ x: 30 - (150 - k) * before, y: 40 })),
          ...Array.from({ length: 150 }, (_, k) => ({
            x: 30 + k * after * Math.cos(bend),
            y: 40 + k * after * Math.sin(bend),
          })),
        ]),
        0.05,
      ).length;
    for (const sign of [1, -1]) {
      expect(stretches(sign * (Math.PI / 12 + 0.8 * doubt))).toBe(1);
      expect(stretches(sign * (Math.PI / 12 + 1.2 * doubt))).toBe(2);
    }
  });

  it.each([
    ['on it', 11, 15],
    ['short of it', 9.5, 13],
    ['past it', 13, 13.5],
    ['inside it, on neither line', 11, 14.5],
  ])('two to each side of a corner are enough for it, with one %s', (_, x, y) => {
    const places = [
      [5, 7],
      [8, 11],
      [x, y],
      [15, 12],
      [19, 9],
    ] as const;
    const { chain } = fitPoints(places.map(([px, py]) => ({ x: px, y: py })));
    expect(chain).toHaveLength(2);
    expect([chain[0]!.x1, chain[0]!.y1]).toEqual([expect.closeTo(11, 9), expect.closeTo(15, 9)]);
  });

  it('that scatter along an arc begin and end where the first and the last of them lie', () => {
    const random = new Random(4);
    const points = Array.from({ length: 400 }, (_, k) => {
      const angle = 0.3 + k / 200;
      return {
        x: 30 + 12 * Math.cos(angle) + random.between(-0.003, 0.003),
        y: 40 + 12 * Math.sin(angle) + random.between(-0.003, 0.003),
      };
    });
    const { chain, deviation } = fitPoints(points, 0.01);
    expect([chain[0]!.x0, chain[0]!.y0]).toEqual([points[0]!.x, points[0]!.y]);
    expect([chain.at(-1)!.x1, chain.at(-1)!.y1]).toEqual([points.at(-1)!.x, points.at(-1)!.y]);
    expect(chain.length).toBeLessThan(7);
    for (const c of chain) expect(Math.abs(c.r - 12)).toBeLessThan(0.8);
    // The deviation is the farthest point's.
    expect(
      farthest(
        points.map(({ x, y }) => [x, y] as const),
        chain,
      ),
    ).toBeCloseTo(deviation, 9);
  });

  it('all round a circle, the last where the first is, are that circle', () => {
    const points = Array.from({ length: 361 }, (_, k) => ({
      x: 30 + 12 * Math.cos((k * Math.PI) / 180),
      y: 40 + 12 * Math.sin((k * Math.PI) / 180),
    }));
    const { chain, deviation } = fitPoints(points);
    expect(deviation).toBeLessThanOrEqual(0.01);
    expect(lengthOf(chain)).toBeCloseTo(24 * Math.PI, 1);
  });
});

it('the peak of a function is found wherever it lies, as near as the steps allow', () => {
  for (const peak of [-3, 0.2, 4.4, 9.7]) {
    const found = findPeak((x) => -Math.abs(x - peak), -5, 11, 30);
    expect(Math.abs(found - peak)).toBeLessThan(16 * 0.6181 ** 30);
  }
});
