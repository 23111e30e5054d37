// Laws of what a turning knife clears, on random outlines of lines that go deeper and less deep, judged by the lines themselves.
import { describe, expect, it } from 'vitest';
import { reachAt } from '../../packages/core/src/machining/reach-at.ts';
import { sweepCut } from '../../packages/core/src/machining/sweep.ts';
import { line } from '../../packages/geometry/src/curve/curve.ts';
import type { XY } from '../support/drawn-curves.ts';
import { Random } from '../support/random.ts';

/** From the edge further and further in, deeper or less deep, and to the face. */
function drawWay(random: Random): XY[] {
  const way: XY[] = [[0, random.between(2, 9)]];
  for (let k = 0; k < 4; k++) way.push([way.at(-1)![0] + random.between(1, 6), random.between(1, 9)]);
  return [...way, [way.at(-1)![0] + random.between(0, 4), 0]];
}

describe('a profile of lines, panel flat', () => {
  it('is swept at each depth to the furthest in that it goes there, moved to where it is set and run on', () => {
    const random = new Random(81);
    for (let n = 0; n < 60; n++) {
      const way = drawWay(random);
      const chain = way.slice(1).map(([x, y], k) => line(...way[k]!, x, y));
      const [reach, depth] = [Math.max(...way.map(([x]) => x)), Math.max(...way.map(([, y]) => y))];
      const [right, down] = [random.between(-0.5, 3), random.between(0, 2)];
      const profile = { shape: 'outline', reach, depth, chain } as const;
      const cut = {
        name: '',
        side: 'front',
        profile,
        depth: depth + down,
        reach: reach + right,
        run: 'under',
        tilt: 0,
      } as const;
      const { swept } = sweepCut(cut, depth + down);
      // Set further in and deeper, and upright from its last point to the face.
      const set = [...way.map(([x, y]): XY => [x + right, y + down]), [reach + right, 0] as XY];
      for (let k = 0; k < 12; k++) {
        const at = random.between(0, depth + down);
        const places = set.slice(1).flatMap(([x1, y1], i) => {
          const [x0, y0] = set[i]!;
          return (y0 - at) * (y1 - at) < 0 ? [x0 + ((at - y0) / (y1 - y0)) * (x1 - x0)] : [];
        });
        const furthest = Math.max(...places);
        if (furthest > 0) expect(reachAt(swept, at), `outline ${n} at ${at}`).toBeCloseTo(furthest, 7);
      }
    }
  });
});
