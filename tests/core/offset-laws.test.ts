// Laws of parallel curves of chains and rings away from the origin,
// judged by points along them that are worked out from centre, radius and angles, and by nothing of the code.
import { describe, expect, it } from 'vitest';
import { arcAngles, pointAlong } from '../../packages/geometry/src/curve/along.ts';
import { line } from '../../packages/geometry/src/curve/curve.ts';
import { distanceTo } from '../../packages/geometry/src/curve/distance.ts';
import { polygon, rectangle } from '../../packages/geometry/src/loop/loop.ts';
import { offsetLoops } from '../../packages/geometry/src/offset/offset.ts';
import { stitch } from '../../packages/geometry/src/offset/stitch.ts';
import { drawArc, drawBow, gap, type XY } from '../support/drawn-curves.ts';
import { between, lengthOf } from '../support/measured-chain.ts';
import { Random } from '../support/random.ts';

it('the parallel of a ring round another one that runs the same way keeps its distance from the outside of that', () => {
  const rings = [rectangle({ x0: 0, y0: 0, x1: 60, y1: 60 }), rectangle({ x0: 20, y0: 20, x1: 26, y1: 26 })];
  const found = offsetLoops(rings, 15).flatMap(({ curves }) => curves);
  const places = found.flatMap((c) =>
    Array.from({ length: 41 }, (_, k) => pointAlong(c, k / 40, Math.abs(arcAngles(c).sweep))),
  );
  const apart = places.map(({ x, y }) =>
    Math.min(...rings.flatMap(({ curves }) => curves.map((c) => distanceTo(c, x, y)))),
  );
  expect(Math.min(...apart)).toBeGreaterThan(15 - 1e-6);
  expect(Math.max(...apart)).toBeLessThan(15 + 1e-6);
  // On the left side, 15 mm in and 5 mm beside the inner ring, it begins where the circle about (20, 26) is left: √(225 − 25) above that.
  const left = places.filter(({ x }) => x < 15.000001);
  expect(Math.min(...left.map(({ y }) => y))).toBeCloseTo(26 + Math.sqrt(200), 6);
});

it('outside a ring without hollows there is a line for each of its sides and one arc for each corner, however it is turned', () => {
  const random = new Random(71);
  for (let n = 0; n < 20; n++) {
    const corners = 3 + (n % 5);
    const places = Array.from({ length: corners }, (_, k): XY => {
      const angle = n + ((k + 0.4 * random.unit()) / corners) * 2 * Math.PI;
      return [30 + 12 * Math.cos(angle), 40 + 12 * Math.sin(angle)];
    });
    const [ring, ...others] = offsetLoops([polygon(places)], -3);
    expect(others).toEqual([]);
    expect(ring!.curves).toHaveLength(2 * corners);
    expect(ring!.curves.filter(({ turn }) => turn !== 0)).toHaveLength(corners);
    // As long as the ring and once round a circle.
    const round = places.reduce((sum, p, k) => sum + gap(p, places[(k + 1) % corners]!), 6 * Math.PI);
    expect(lengthOf(ring!.curves)).toBeCloseTo(round, 7);
  }
});

it('with sharp corners the sides run on to where they meet, up to four distances out, and beyond that there is a round', () => {
  const random = new Random(72);
  const seen = { sharp: 0, round: 0 };
  for (let n = 0; n < 90; n++) {
    // Triangles with corners from a few degrees up, and rings of four and five corners.
    const corners = 3 + (n % 3);
    const places = Array.from({ length: corners }, (_, k): XY => {
      const angle = n + ((k + 0.9 * random.unit()) / corners) * 2 * Math.PI;
      return [30 + 12 * Math.cos(angle), 40 + 12 * Math.sin(angle)];
    });
    // How far the way turns at each corner: the tip lies 1/cos of half of it out, and both sides grow by the tangent of that.
    const bends = places.map((p, k) => {
      const [before, after] = [places[(k + corners - 1) % corners]!, places[(k + 1) % corners]!];
      return between([p[0] - before[0], p[1] - before[1]], [after[0] - p[0], after[1] - p[1]]);
    });
    const isSharp = (bend: number) => 1 / Math.cos(bend / 2) < 4;
    const long = bends.reduce((sum, bend) => sum + 2 * (isSharp(bend) ? 2 * Math.tan(bend / 2) : bend), 0);
    const round = bends.filter((bend) => !isSharp(bend)).length;
    seen.round += round;
    seen.sharp += corners - round;
    const [ring, ...others] = offsetLoops([polygon(places)], -2, 'sharp');
    expect(others).toEqual([]);
    expect(ring!.curves.filter(({ turn }) => turn !== 0)).toHaveLength(round);
    expect(lengthOf(ring!.curves)).toBeCloseTo(
      places.reduce((sum, p, k) => sum + gap(p, places[(k + 1) % corners]!), long),
      7,
    );
  }
  expect(Math.min(seen.sharp, seen.round)).toBeGreaterThan(5);
});

it('a bow too tight for a parallel on its inside still has the round about its corners', () => {
  // A line to (40, 40), then off 60° to the right a bow of radius 2 that turns left: at 5 mm to the left it has no parallel, but the
  // corner is gone round at 5 mm.
  const bowed = drawArc(40 + 2 * Math.cos(Math.PI / 6), 40 + 2 * Math.sin(Math.PI / 6), 2, -Math.PI * (5 / 6), 1.2);
  const chain = [line(30, 40, 40, 40), bowed.curve];
  const found = offsetLoops([{ curves: chain, closed: false }], 5).flatMap(({ curves }) => curves);
  for (const degrees of [89, 80, 70]) {
    const angle = (degrees * Math.PI) / 180;
    const place: XY = [40 + 5 * Math.cos(angle), 40 + 5 * Math.sin(angle)];
    if (Math.min(...chain.map((c) => distanceTo(c, ...place))) < 5 - 1e-9) continue;
    expect(Math.min(...found.map((c) => distanceTo(c, ...place))), `${degrees}°`).toBeLessThan(1e-7);
  }
  for (const c of found)
    for (const u of [0, 0.3, 0.7, 1]) {
      const { x, y } = pointAlong(c, u, Math.abs(arcAngles(c).sweep));
      expect(Math.min(...chain.map((each) => distanceTo(each, x, y)))).toBeCloseTo(5, 6);
    }
});

describe('parts that are joined', () => {
  it('give one open chain from its first to its last, and one ring, in whatever order they come', () => {
    const random = new Random(73);
    const places: XY[] = [
      [30, 40],
      [36, 41],
      [39, 47],
      [33, 52],
      [27, 46],
    ];
    const shuffled = <T>(parts: readonly T[]) =>
      parts
        .map((part) => [random.unit(), part] as const)
        .sort(([a], [b]) => a - b)
        .map(([, part]) => part);
    const sides = polygon(places).curves;
    for (let n = 0; n < 20; n++) {
      const [open, ...others] = stitch(shuffled(sides.slice(0, 4)));
      expect(others).toEqual([]);
      expect(open).toEqual({ curves: sides.slice(0, 4), closed: false });
      const [ring, ...more] = stitch(shuffled(sides));
      expect(more).toEqual([]);
      expect([ring!.closed, ring!.curves.length]).toEqual([true, 5]);
    }
  });

  it('are no ring where it would be thinner than rounding, wherever it lies', () => {
    const triangle = (height: number): XY[] => [
      [30, 40],
      [36, 40],
      [33, 40 + height],
    ];
    expect(stitch(polygon(triangle(2e-8)).curves)).toEqual([]);
    expect(stitch(polygon(triangle(2e-6)).curves)).toHaveLength(1);
    const ring = rectangle({ x0: 30, y0: 40, x1: 42, y1: 46 });
    expect(offsetLoops([ring], 3 - 1e-9)).toEqual([]);
    const [thin] = offsetLoops([ring], 3 - 1e-6);
    expect(lengthOf(thin!.curves)).toBeCloseTo(12, 4);
  });
});

describe('the parallel of open chains', () => {
  it('keeps its distance from their ends as well, on lines and arcs, on either side', () => {
    // A level line, one that comes down to 3 mm above it, a bow with a corner, and one that ends 9 mm above the level line, 4 mm above its
    // parallel at 5 mm.
    const chains = [
      [line(30, 40, 50, 40)],
      [line(40, 43, 40, 60)],
      [drawBow([52, 40], [60, 48], 1.2).curve, line(60, 48, 63, 41)],
      [line(31, 49, 31, 60)],
    ];
    const loops = chains.map((curves) => ({ curves, closed: false }));
    for (const distance of [5, -5, 2]) {
      const found = offsetLoops(loops, distance).flatMap(({ curves }) => curves);
      let apart: number[] = [];
      for (const c of found)
        for (let k = 0; k <= 40; k++) {
          const { x, y } = pointAlong(c, k / 40, Math.abs(arcAngles(c).sweep));
          apart.push(Math.min(...chains.flat().map((each) => distanceTo(each, x, y))));
        }
      apart = apart.map((d) => Math.abs(d - Math.abs(distance)));
      expect(Math.max(...apart)).toBeLessThan(1e-6);
    }
    // At 5 mm the first one's stops 5 mm before the upright and goes on 5 mm after it; before that it is broken up to √(25 − 16) past the
    // end that is 4 mm above it.
    const level = offsetLoops([loops[0]!, loops[1]!, loops[3]!], 5)
      .flatMap(({ curves }) => curves)
      .filter((c) => c.turn === 0 && c.y0 === c.y1);
    const ends = level.map((c) => [c.x0, c.x1].map((x) => Math.round(1000 * x) / 1000));
    expect(ends).toEqual([
      [34, 35],
      [45, 50],
    ]);
  });
});
