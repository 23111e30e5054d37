// Chains that touch themselves and chains that cross themselves, on an arc whose centre is not the origin; and boxes found without looking at all of them.
import { describe, expect, it } from 'vitest';
import type { Box } from '../../packages/geometry/src/curve/box.ts';
import { arc, line } from '../../packages/geometry/src/curve/curve.ts';
import { findSelfCrossing } from '../../packages/geometry/src/loop/self-crossing.ts';
import { BoxTree } from '../../packages/geometry/src/offset/box-tree.ts';
import { Random } from '../support/random.ts';
import { processorTime } from '../support/timing.ts';

describe('a chain that comes back to its own arc', () => {
  // Over a circle of 10 about (30, 20), round to the left, and down to a point of the arc again.
  const comeBack = (degrees: number, into: boolean) => {
    const angle = (degrees * Math.PI) / 180;
    const out = (turn: number, length: number) => ({
      x: 30 + 10 * Math.cos(angle) + length * Math.cos(angle + turn),
      y: 20 + 10 * Math.sin(angle) + length * Math.sin(angle + turn),
    });
    const [from, tip, to] = [out(0.9, 12), out(0, 0), into ? out(Math.PI, 6) : out(-0.9, 12)];
    const crossing = findSelfCrossing([
      arc(40, 20, 20, 20, 30, 20, 1),
      line(20, 20, -10, 20),
      line(-10, 20, -10, 60),
      line(-10, 60, from.x, from.y),
      line(from.x, from.y, tip.x, tip.y),
      line(tip.x, tip.y, to.x, to.y),
    ]);
    return { crossing, tip };
  };

  it.each([35, 50, 65, 80, 95, 110, 125, 140])('touches it from outside, or crosses it, at %s°', (degrees) => {
    expect(comeBack(degrees, false).crossing).toBeNull();
    const { crossing, tip } = comeBack(degrees, true);
    expect(crossing).toMatchObject({ x: expect.closeTo(tip.x, 6), y: expect.closeTo(tip.y, 6) });
  });
});

it('a tree of 10,000 boxes finds those that meet a small one, in a fortieth of the time that looking at all takes', () => {
  const random = new Random(7);
  const boxAt = (size: number): Box => {
    const [x0, y0] = [random.between(0, 1000), random.between(0, 1000)];
    return { x0, y0, x1: x0 + random.between(0, size), y1: y0 + random.between(0, size) };
  };
  const boxes = Array.from({ length: 10_000 }, () => boxAt(3));
  const sought = Array.from({ length: 40 }, () => boxAt(10));
  const tree = new BoxTree(boxes);
  const byTree = () =>
    sought.map((box) => {
      const found: number[] = [];
      tree.search(box, (id) => void found.push(id));
      return found.sort((a, b) => a - b);
    });
  const byLooking = () =>
    sought.map(({ x0, y0, x1, y1 }) =>
      boxes.flatMap((b, id) => (b.x0 <= x1 && x0 <= b.x1 && b.y0 <= y1 && y0 <= b.y1 ? [id] : [])),
    );
  expect(byTree()).toEqual(byLooking());
  // A search takes some hundredths of a millisecond once its code is compiled: a few dozen tries find that.
  const least = (tries: number, work: () => unknown) =>
    Math.min(...Array.from({ length: tries }, () => processorTime(work)));
  expect(least(40, byTree)).toBeLessThan(least(5, byLooking) / 40);
});
