// Laws of what a turning knife clears, on random outlines of lines that go deeper and less deep, judged by the lines themselves.
import { describe, expect, it } from 'vitest';
import { seeProfile } from '../../packages/core/src/knife/seen-profile.ts';
import { faceEnd } from '../../packages/core/src/machining/face-end.ts';
import { reachAt } from '../../packages/core/src/machining/reach-at.ts';
import { sweepCut } from '../../packages/core/src/machining/sweep.ts';
import { line, shiftCurve } from '../../packages/geometry/src/curve/curve.ts';
import { drawSome, type XY } from '../support/drawn-curves.ts';
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

it('a sweep leaves the face at the farthest of all its places that lie below it, on 200 lines and arcs that may turn back', () => {
  const random = new Random(57);
  let beyond = 0;
  for (const { curve, points } of drawSome(random, 200)) {
    const level = random.between(30, 50);
    const swept = [shiftCurve(curve, 0, -level)];
    const below = points.filter(([, y]) => y > level).map(([x]) => x);
    if (below.length === 0) continue;
    const end = faceEnd(swept)!;
    // Between two of its places 0.1 mm apart a curve may reach a little further, across the face by that much at most.
    const farthest = Math.max(...below);
    expect(end).toBeGreaterThan(farthest - 1e-9);
    expect(end).toBeLessThan(farthest + 0.2);
    if (farthest > Math.max(curve.x0, curve.x1) + 0.2) beyond++;
  }
  // Arcs that bulge past both of their ends.
  expect(beyond).toBeGreaterThan(20);
});

it('a tip at -0, as an outline may be given, lies at station 0', () => {
  for (const tilt of [0, 0.4, Math.PI / 2]) expect(seeProfile([line(-3, -3, -0, -0)], tilt).tipStation).toBe(0);
});
