// Laws of strips, envelopes, areas and moments of random chains from left to right,
// judged by points along them that are worked out from centre, radius and angles, and by nothing of the code.
import { describe, expect, it } from 'vitest';
import { heightAt } from '../../packages/geometry/src/curve/piece.ts';
import { upperEnvelope } from '../../packages/geometry/src/strips/envelope.ts';
import { momentsUnder } from '../../packages/geometry/src/strips/moments.ts';
import { walkStrips } from '../../packages/geometry/src/strips/strips.ts';
import { type Thread, threadChain } from '../../packages/geometry/src/strips/thread.ts';
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
          const n = 4000;
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
