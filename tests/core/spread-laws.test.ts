// What the worst case is put together from: extremes of leaning surfaces against many places, and the search against sums of one size each.
import { describe, expect, it } from 'vitest';
import type { Joint } from '../../packages/core/src/spread/joint.ts';
import { seekWorst } from '../../packages/core/src/spread/seek-worst.ts';
import type { PanelSide } from '../../packages/core/src/spread/side.ts';
import { movedDepth } from '../../packages/core/src/spread/side-depth.ts';
import { type Source, UNKNOWN } from '../../packages/core/src/spread/sources.ts';
import { cutSurface, depthAt, leastDepth, leastLeaning, mostLeaning } from '../../packages/core/src/spread/surface.ts';
import { createTally } from '../../packages/core/src/spread/tally.ts';
import { arc, type Curve, line } from '../../packages/geometry/src/curve/curve.ts';
import { Random } from '../support/random.ts';

/** A stretch of a surface, by a formula of its own. */
interface Stretch {
  readonly x0: number;
  readonly x1: number;
  readonly depth: (x: number) => number;
}

/** An edge that runs forward in x: lines, bows of circles either way and upright steps; `falling`, with ends that only get shallower. */
function drawEdge(random: Random, falling = false): { readonly edge: Curve[]; readonly stretches: Stretch[] } {
  const edge: Curve[] = [];
  const stretches: Stretch[] = [];
  let [x, y] = [0, random.between(3, 8)];
  for (let n = 3 + Math.floor(random.unit() * 4); n > 0; n--) {
    const [x1, y1] = [x + random.between(0.5, 4), falling ? y * random.between(0.3, 0.8) : random.between(1, 9)];
    const [x0, y0, chord] = [x, y, Math.hypot(x1 - x, y1 - y)];
    const bend = random.oneOf([-1, 0, 1] as const);
    // A radius from which neither end is past the upright.
    const radius = ((chord * chord) / (2 * (x1 - x))) * (falling ? random.between(1.5, 12) : random.between(1.1, 2));
    if (bend === 0) {
      edge.push(line(x0, y0, x1, y1));
      stretches.push({ x0, x1, depth: (at) => y0 + ((y1 - y0) * (at - x0)) / (x1 - x0) });
    } else {
      const off = bend * Math.sqrt(radius ** 2 - (chord / 2) ** 2);
      const [cx, cy] = [(x0 + x1) / 2 - ((y1 - y0) / chord) * off, (y0 + y1) / 2 + ((x1 - x0) / chord) * off];
      edge.push(arc(x0, y0, x1, y1, cx, cy, bend));
      stretches.push({ x0, x1, depth: (at) => cy - bend * Math.sqrt(Math.max(0, radius ** 2 - (at - cx) ** 2)) });
    }
    [x, y] = [x1, y1];
    if (random.unit() < 0.4) {
      const step = falling ? -y * random.between(0, 0.2) : random.between(-0.8, 0.8);
      edge.push(line(x, y, x, y + step));
      y += step;
    }
  }
  return { edge, stretches };
}

describe('a surface that leans', () => {
  it('is least and most where no place among thousands is less or more, on 100 random edges', () => {
    const random = new Random(71);
    for (let i = 0; i < 100; i++) {
      const { edge, stretches } = drawEdge(random);
      const end = stretches.at(-1)!.x1;
      const surface = cutSurface(edge);
      expect(surface.end).toBeCloseTo(end, 12);
      const [from, to] = [random.between(0, end / 2), random.between(end / 2, end)];
      const slope = i % 4 === 0 ? 0 : random.between(-1.5, 1.5);
      // Both ends of every stretch are among the places.
      const places = stretches.flatMap(({ x0, x1, depth }) => {
        const [a, b] = [Math.max(x0, from), Math.min(x1, to)];
        return a > b
          ? []
          : Array.from({ length: 401 }, (_, k) => a + ((b - a) * k) / 400).map((x) => depth(x) + slope * x);
      });
      const [least, most] = [Math.min(...places), Math.max(...places)];
      const spot = { x: Number.NaN, depth: Number.NaN };
      leastLeaning(surface, from, to, slope, spot);
      expect(spot.depth).toBeLessThan(least + 1e-9);
      expect(spot.depth).toBeGreaterThan(least - 2e-4);
      const there = stretches.filter(({ x0, x1 }) => x0 <= spot.x + 1e-9 && x1 >= spot.x - 1e-9);
      expect(Math.min(...there.map(({ depth }) => depth(spot.x)))).toBeCloseTo(spot.depth - slope * spot.x, 6);
      const found = mostLeaning(surface, from, to, slope);
      expect(found).toBeGreaterThan(most - 1e-9);
      expect(found).toBeLessThan(most + 2e-4);
      if (slope === 0) expect(leastDepth(surface, from, to)).toBeCloseTo(spot.depth, 9);
      // Further in than the cut goes it leaves the face alone.
      expect(leastDepth(surface, from, end + 1)).toBe(Number.NEGATIVE_INFINITY);
      expect(depthAt(surface, end + 1, 1)).toBe(Number.NEGATIVE_INFINITY);
      expect(mostLeaning(surface, end + 1, end + 2, slope)).toBe(Number.NEGATIVE_INFINITY);
    }
  });

  it('falls where no place is deeper than one before it', () => {
    const random = new Random(72);
    let falling = 0;
    for (let i = 0; i < 100; i++) {
      const { edge, stretches } = drawEdge(random, i % 2 === 0);
      const depths = stretches.flatMap(({ x0, x1, depth }) =>
        Array.from({ length: 101 }, (_, k) => depth(x0 + ((x1 - x0) * k) / 100)),
      );
      const falls = depths.every((depth, k) => k === 0 || depth <= depths[k - 1]! + 1e-9);
      expect(cutSurface(edge).falls).toBe(falls);
      if (falls) falling++;
    }
    expect(falling).toBeGreaterThan(10);
    expect(falling).toBeLessThan(90);
  });
});

// A cut that is moved inwards runs level from the edge to where it began.
it('a side is least deep where no place among 500 is less, under three random cuts that are moved and lean', () => {
  const random = new Random(74);
  for (let n = 0; n < 400; n++) {
    const moves = new Float64Array(16);
    const drawn = [7, 10, 13].map((place) => {
      const { edge, stretches } = drawEdge(random);
      const [height, fence] = [random.between(-1, 1), random.between(-2, 2)];
      // Degrees between fence and table, on every fourth.
      const square = n % 4 === 0 ? random.between(-2, 2) : 0;
      moves.set([height, fence, square], place);
      const depthAt = (x: number) => {
        const at = Math.max(0, x - fence);
        const here = stretches.filter(({ x0, x1 }) => x0 <= at && at <= x1);
        return height + here[0]!.depth(at) - Math.tan((square * Math.PI) / 180) * x;
      };
      return { surface: cutSurface(edge), place, depthAt };
    });
    const surfaces = drawn.map(({ surface }) => surface);
    const to = random.between(0.5, 1) * (Math.min(...surfaces.map(({ end }) => end)) - 2.1);
    if (to <= 0) continue;
    const cuts = drawn.map(({ surface, place }) => ({ surface, place, tilt: 0, over: false }));
    const shifts = { right: [0, 0, 0], down: [0, 0, 0], lean: [0, 0, 0] };
    const side = { cuts, surfaces, shifts, falls: false, found: { x: 0, depth: 0 } } as unknown as PanelSide;
    const places = Array.from({ length: 501 }, (_, k) =>
      Math.max(...drawn.map(({ depthAt }) => depthAt((to * (k + 0.5)) / 502))),
    );
    expect(movedDepth(side, moves, to), `${n}`).toBeLessThan(Math.max(0, Math.min(...places)) + 1e-6);
  }
});

it('a tally of figures a step apart has the quantiles, mean and deviation of that row, and parts them among its bars', () => {
  // 20 000 figures from 2 to 3, one in the middle of each fine bin: what a part p of them does not exceed is 2 + p.
  const count = 20_000;
  const figures = Float64Array.from({ length: count }, (_, i) => 2 + (i + 0.5) / count);
  const tally = createTally([2, 3]);
  expect(tally.read()).toBeNull();
  tally.add(figures, count);
  const { mean, deviation, quantiles, count: counted } = tally.read()!;
  expect(counted).toBe(count);
  expect(mean).toBeCloseTo(2.5, 12);
  // A row of n equal steps h: h²·n(n + 1)/12.
  expect(deviation).toBeCloseTo(Math.sqrt((count * (count + 1)) / 12) / count, 9);
  for (const [part, figure] of Object.entries(quantiles)) expect(figure).toBeCloseTo(2 + Number(part), 9);
  const { from, step, counts } = tally.histogram();
  expect([from, step * counts.length]).toEqual([expect.closeTo(2, 12), expect.closeTo(1, 12)]);
  expect(new Set(counts)).toEqual(new Set([count / counts.length]));
  // Few figures: between the two bins that hold them nothing is counted.
  const few = createTally([0, 1]);
  few.add(Float64Array.from([0.25, 0.75, 0.75]), 3);
  expect(few.read()!.quantiles['0.025']).toBeCloseTo(0.25, 3);
  expect(few.read()!.quantiles['0.5']).toBeCloseTo(0.75, 3);
});

it('the worst of sizes that each count for themselves is the sum of their own worst, whether all are tried or climbed to', () => {
  const random = new Random(73);
  for (let i = 0; i < 120; i++) {
    const count = 1 + (i % 9);
    // a·m − b·m² and the like: greatest at an end or where its slope is nothing.
    const terms = Array.from({ length: count }, () => ({ a: random.between(-2, 2), b: random.between(-3, 3) }));
    const sources = terms.map(
      (_, place): Source => ({ name: `${place}`, plusMinus: random.between(0.05, 1.5), place, sense: UNKNOWN }),
    );
    const value = (k: number, move: number) => terms[k]!.a * move - terms[k]!.b * move * move;
    const read = (moves: ArrayLike<number>) => terms.reduce((sum, _, k) => sum + value(k, moves[k]!), 0);
    const joint = { moveCount: count } as Joint;
    for (const way of [-1, 1] as const) {
      const worst = terms.reduce((sum, { a, b }, k) => {
        const { plusMinus } = sources[k]!;
        const level = a / (2 * b);
        const places = [-plusMinus, plusMinus, ...(Math.abs(level) < plusMinus ? [level] : [])];
        return sum + way * Math.max(...places.map((move) => way * value(k, move)));
      }, 0);
      expect(seekWorst(read, joint, sources, 'clearance', way)).toBeCloseTo(worst, 5);
    }
  }
});
