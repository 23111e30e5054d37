// Laws of distances, and of boxes that are met, on random lines and arcs away from the origin,
// judged by points along them that are worked out from centre, radius and angles, and by nothing of the code.
import { describe, expect, it } from 'vitest';
import { type Box, boxesOverlap, joinBoxes, lineMeetsBox } from '../../packages/geometry/src/curve/box.ts';
import { curveMeetsBox } from '../../packages/geometry/src/curve/curve-box.ts';
import { distanceTo } from '../../packages/geometry/src/curve/distance.ts';
import { BoxTree } from '../../packages/geometry/src/offset/box-tree.ts';
import { drawManyAwkward, drawSome, nearest, STEP, type XY } from '../support/drawn-curves.ts';
import { Random } from '../support/random.ts';

describe.each([
  ['random', drawSome(new Random(11), 60)],
  ['awkward', drawManyAwkward(new Random(14), 60)],
])('on 60 %s curves', (_, all) => {
  it('the distance of a point is that of the nearest point along each', () => {
    const random = new Random(12);
    for (const each of all) {
      for (let n = 0; n < 6; n++) {
        const place: XY = [random.between(5, 55), random.between(15, 65)];
        const least = nearest(each, place);
        const found = distanceTo(each.curve, ...place);
        expect(found).toBeLessThan(least + 1e-9);
        expect(found).toBeGreaterThan(least - STEP);
      }
    }
  });

  it('a box is met by each that has a point in it, and by none that stays away', () => {
    const random = new Random(13);
    const seen = new Set<boolean>();
    for (const { curve, points } of all) {
      for (let n = 0; n < 8; n++) {
        const [x0, y0] = [random.between(15, 45), random.between(25, 55)];
        const box: Box = { x0, y0, x1: x0 + random.between(1, 9), y1: y0 + random.between(1, 9) };
        const by = random.oneOf([0, 1.5]);
        const within = (more: number) =>
          points.some(([x, y]) => x > box.x0 - more && x < box.x1 + more && y > box.y0 - more && y < box.y1 + more);
        if (within(by) !== within(by + STEP)) continue;
        seen.add(within(by));
        expect(curveMeetsBox(curve, box, by)).toBe(within(by));
        if (curve.turn === 0) expect(lineMeetsBox(curve.x0, curve.y0, curve.x1, curve.y1, box, by)).toBe(within(by));
      }
    }
    expect(seen.size).toBe(2);
  });
});

it('the box of boxes reaches from the least to the greatest of their sides, and there is none of none', () => {
  const random = new Random(62);
  for (let n = 1; n < 9; n++) {
    const boxes = Array.from({ length: n }, () => {
      const [x0, y0] = [random.between(-40, 40), random.between(-40, 40)];
      return { x0, y0, x1: x0 + random.between(0, 9), y1: y0 + random.between(0, 9) };
    });
    const sorted = (side: keyof Box) => boxes.map((box) => box[side]).sort((a, b) => a - b);
    const [x0, y0, x1, y1] = [sorted('x0')[0], sorted('y0')[0], sorted('x1').at(-1), sorted('y1').at(-1)];
    expect(joinBoxes(boxes)).toEqual({ x0, y0, x1, y1 });
  }
  expect(joinBoxes([])).toBeNull();
});

it('two boxes overlap, grown by so much, where they share a point along both axes', () => {
  const random = new Random(61);
  const seen = new Set<boolean>();
  for (let n = 0; n < 400; n++) {
    const [x, y, u, v] = [30, 40, 30, 40].map((at) => at + random.between(-4, 4)) as [number, number, number, number];
    const one = { x0: x, y0: y, x1: x + random.between(0.5, 4), y1: y + random.between(0.5, 4) };
    const other = { x0: u, y0: v, x1: u + random.between(0.5, 4), y1: v + random.between(0.5, 4) };
    const by = random.oneOf([0, 1]);
    // Their middles are nearer each other than half of both sizes together.
    const near = (a0: number, a1: number, b0: number, b1: number) =>
      Math.abs((a0 + a1) / 2 - (b0 + b1) / 2) < (a1 - a0 + b1 - b0) / 2 + by;
    const share = near(one.x0, one.x1, other.x0, other.x1) && near(one.y0, one.y1, other.y0, other.y1);
    seen.add(share);
    expect(boxesOverlap(one, other, by)).toBe(share);
  }
  expect(seen.size).toBe(2);
});

describe('a tree of boxes', () => {
  it.each([1, 7, 8, 9, 65, 300])('finds each of %i that meets a box, edges included, and no other', (count) => {
    const random = new Random(count);
    const made = (): Box => {
      const [x0, y0] = [random.between(20, 60), random.between(-30, 30)];
      return { x0, y0, x1: x0 + random.between(0, 6), y1: y0 + random.between(0, 6) };
    };
    const boxes = Array.from({ length: count }, made);
    const tree = new BoxTree(boxes);
    for (let n = 0; n < 20; n++) {
      const asked = made();
      const found: number[] = [];
      tree.search(asked, (id) => void found.push(id));
      const wanted = [...boxes.keys()].filter((k) => boxesOverlap(boxes[k]!, asked, 1e-12));
      expect(found.sort((a, b) => a - b)).toEqual(wanted);
    }
  });
});
