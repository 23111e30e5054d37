// Laws of strips, envelopes, areas and moments of random chains from left to right,
// judged by points along them that are worked out from centre, radius and angles, and by nothing of the code.
import { describe, expect, it } from 'vitest';
import { line } from '../../packages/geometry/src/curve/curve.ts';
import { heightAt } from '../../packages/geometry/src/curve/piece.ts';
import { upperEnvelope } from '../../packages/geometry/src/strips/envelope.ts';
import { momentsUnder } from '../../packages/geometry/src/strips/moments.ts';
import { liesOn, walkStrips } from '../../packages/geometry/src/strips/strips.ts';
import { levelThread, type Thread, threadChain } from '../../packages/geometry/src/strips/thread.ts';
import { drawChain } from '../support/drawn-chain.ts';
import type { XY } from '../support/drawn-curves.ts';
import { Random } from '../support/random.ts';

describe('chains from left to right', () => {
  /** Five steps to the right from `x`, about 40 high. */
  const wander = (random: Random, x: number): XY[] =>
    Array.from({ length: 5 }).reduce<XY[]>(
      (way) => [...way, [way.at(-1)![0] + random.between(2, 5), way.at(-1)![1] + random.between(-1.2, 1.2)]],
      [[x, random.between(38, 41)]],
    );
  const random = new Random(41);
  const sets = Array.from({ length: 20 }, () =>
    Array.from({ length: 4 }, () => drawChain(random, wander(random, random.between(20, 27)))),
  );

  it('lie in every strip in the order of their heights, and cross in none', () => {
    for (const set of sets) {
      const threads: Thread[] = [];
      for (const [of, { chain }] of set.entries()) threadChain(chain, of, threads);
      let wide = 0;
      walkStrips(threads, 18, 50, ({ left, right, order, heights }) => {
        wide += right - left;
        for (const u of [0.1, 0.5, 0.9]) {
          const x = left + u * (right - left);
          const real = set.map(({ heightOf }) => heightOf(x));
          expect(order.map(({ of }) => of)).toEqual(
            [...real.keys()].filter((k) => real[k] !== null).sort((a, b) => real[a]! - real[b]!),
          );
          if (u === 0.5) for (const [k, t] of order.entries()) expect(heights[k]).toBeCloseTo(real[t.of]!, 9);
        }
      });
      expect(wide).toBeCloseTo(32, 9);
    }
  });

  it('have as their upper envelope the highest of them', () => {
    for (const set of sets) {
      const envelope = upperEnvelope(set.map(({ chain }) => chain));
      for (let n = 0; n < 20; n++) {
        const x = random.between(28, 31);
        const highest = Math.max(...set.map(({ heightOf }) => heightOf(x) ?? -Infinity));
        if (!Number.isFinite(highest)) continue;
        const top = envelope.find(({ x0, x1 }) => x0 <= x && x < x1)!;
        expect(heightAt(top, x)).toBeCloseTo(highest, 9);
      }
    }
  });

  it('have the area and the moments that a sum over thin strips has', () => {
    for (const set of sets)
      for (const { chain, heightOf } of set) {
        for (const depthFrom of [null, 90]) {
          const threads: Thread[] = [];
          threadChain(chain, 0, threads, depthFrom);
          const { low, high } = threads[0]!;
          const [from, to] = [chain[0]!.x0 + 0.4, chain.at(-1)!.x1 - 0.3];
          const n = 1500;
          const sum = { area: 0, x: 0, y: 0 };
          let [least, most] = [Infinity, -Infinity];
          for (let k = 0; k < n; k++) {
            const x = from + ((k + 0.5) / n) * (to - from);
            const y = depthFrom === null ? heightOf(x)! : depthFrom - heightOf(x)!;
            const strip = (y * (to - from)) / n;
            sum.area += strip;
            sum.x += x * strip;
            sum.y += (y / 2) * strip;
            [least, most] = [Math.min(least, y), Math.max(most, y)];
          }
          const found = momentsUnder(threads[0]!, from, to);
          for (const key of ['area', 'x', 'y'] as const) expect(found[key] / sum[key]).toBeCloseTo(1, 6);
          // Its least and greatest height hold it, and lie within a step of its ends' own.
          expect(low).toBeLessThan(least + 1e-9);
          expect(high).toBeGreaterThan(most - 1e-9);
          const ends = chain.flatMap((c) => [c.y0, c.y1]).map((y) => (depthFrom === null ? y : depthFrom - y));
          expect(low).toBeGreaterThan(Math.min(least, ...ends) - 0.01);
          expect(high).toBeLessThan(Math.max(most, ...ends) + 0.01);
        }
      }
  });
});

describe('strips of threads that start and end next to one another', () => {
  it('are each wider than 1e-12 mm, follow each other from end to end, and hold the threads that reach over them', () => {
    const random = new Random(42);
    for (let n = 0; n < 100; n++) {
      // Ends at whole numbers or a few 1e-13 mm beside them, some at the ends of what is walked.
      const place = () => Math.floor(random.between(0, 7)) + 1e-13 * Math.floor(random.between(-9, 10));
      const threads = Array.from({ length: 6 }, (_, k) => {
        const [a, b] = [place(), place()];
        return levelThread(Math.min(a, b), Math.max(a, b), 40 + k, k, k);
      });
      const [from, to] = [1, 6 + random.oneOf([0, 4e-13, -4e-13, 3e-12])];
      let end = from;
      walkStrips(threads, from, to, ({ left, right, order }) => {
        expect(left).toBe(end);
        expect(right - left).toBeGreaterThan(1e-12);
        end = right;
        const sure = threads.filter(({ x0, x1 }) => x0 <= left && x1 >= right).map(({ id }) => id);
        const near = threads.filter(({ x0, x1 }) => x0 < left + 1.1e-12 && x1 > left + 0.9e-12).map(({ id }) => id);
        const found = order.map(({ id }) => id);
        expect(found).toEqual(found.toSorted((a, b) => a - b));
        expect(sure.filter((id) => !found.includes(id))).toEqual([]);
        expect(found.filter((id) => !near.includes(id))).toEqual([]);
      });
      expect(end).toBe(to);
    }
  });

  it('are none at the end of what is walked, where two threads meet just there', () => {
    const threads: Thread[] = [levelThread(20, 50, 40, 0, 0)];
    threadChain([line(20, 31, 50, 40)], 1, threads);
    const seen: unknown[] = [];
    walkStrips(threads, 20, 50, ({ left, right, order }) => seen.push([left, right, order.length]));
    expect(seen).toEqual([[20, 50, 2]]);
  });
});

describe('two threads of one region, between whose ends no stop is made', () => {
  /** Heights above a base at some parts of the way, straight between them. */
  const shapes: readonly { readonly above: readonly XY[]; readonly coincide: boolean }[] = [
    // Touches in the middle; touches at both ends; parts near the right end, and near the left; lies on it all the way.
    {
      above: [
        [0, 1],
        [0.5, 0],
        [1, 1],
      ],
      coincide: false,
    },
    {
      above: [
        [0, 0],
        [0.5, 1],
        [1, 0],
      ],
      coincide: false,
    },
    {
      above: [
        [0, 0],
        [0.9, 0],
        [1, 1],
      ],
      coincide: false,
    },
    {
      above: [
        [0, 1],
        [0.1, 0],
        [1, 0],
      ],
      coincide: false,
    },
    {
      above: [
        [0, 0],
        [1, 0],
      ],
      coincide: true,
    },
  ];

  it('are in the order of their heights wherever these differ, and coincide only where they do all the way', () => {
    const random = new Random(43);
    for (let n = 0; n < 100; n++) {
      const { above, coincide } = shapes[n % shapes.length]!;
      const [from, wide, base] = [random.between(0, 30), random.between(2, 20), random.between(-40, 40)];
      const high = random.between(0.1, 3);
      const chainOf = (way: 1 | -1) =>
        above.slice(1).map(([u, y], k) => {
          const [u0, y0] = above[k]!;
          return line(from + u0 * wide, base + way * y0 * high, from + u * wide, base + way * y * high);
        });
      for (const way of [1, -1] as const)
        for (const levelFirst of [true, false]) {
          const level = [line(from, base, from + wide, base)];
          const bent = chainOf(way);
          const threads: Thread[] = [];
          for (const chain of levelFirst ? [level, bent] : [bent, level]) threadChain(chain, 0, threads);
          let strips = 0;
          walkStrips(threads, from, from + wide, (strip) => {
            strips++;
            expect(liesOn(strip, 0, 1), `${n}`).toBe(coincide);
            const levelId = levelFirst ? 0 : 1;
            if (!coincide) expect(strip.order[way === 1 ? 0 : 1]!.id, `${n}`).toBe(levelId);
          });
          expect(strips).toBe(1);
        }
    }
  });
});
