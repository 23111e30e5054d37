// Threads, the strips between them and the splitting of curves, away from the origin, where one curve lies along another.
import { describe, expect, it } from 'vitest';
import { pointAt } from '../../packages/geometry/src/curve/along.ts';
import { arc, type Curve, line } from '../../packages/geometry/src/curve/curve.ts';
import { type Piece, splitCurve } from '../../packages/geometry/src/curve/piece.ts';
import { splitAtCrossings } from '../../packages/geometry/src/offset/split.ts';
import { liesOn, type Strip, walkStrips } from '../../packages/geometry/src/strips/strips.ts';
import {
  curveOver,
  levelThread,
  type Thread,
  threadChain,
  threadHeight,
} from '../../packages/geometry/src/strips/thread.ts';

describe('curves that lie along each other', () => {
  const ends = (curves: readonly Curve[]) => curves.map(({ x0, y0, x1, y1 }) => [x0, y0, x1, y1]);

  it('two on one line are split where the other one starts and ends', () => {
    // Along (3, 4)/5: the first from 0 to 50, the second from 20 to 75, and back.
    const there = [line(0, 0, 30, 40), line(12, 16, 45, 60)];
    expect(ends(splitAtCrossings(there, []))).toEqual([
      [0, 0, 12, 16],
      [12, 16, 30, 40],
      [12, 16, 30, 40],
      [30, 40, 45, 60],
    ]);
    expect(ends(splitAtCrossings([there[0]!], [line(45, 60, 12, 16)]))).toEqual([
      [0, 0, 12, 16],
      [12, 16, 30, 40],
    ]);
  });

  it('wherever they lie, and if they lie less than 1e-9 mm apart', () => {
    // From (100, 200) along (3, 4)/5: the second 5e-10 mm to the left of the first, from 20 to 75.
    const [first, second] = [line(100, 200, 130, 240), line(112 - 4e-10, 216 + 3e-10, 145 - 4e-10, 260 + 3e-10)];
    const found = splitAtCrossings([first], [second]);
    expect(found).toHaveLength(2);
    expect(Math.hypot(found[0]!.x1 - 112, found[0]!.y1 - 216)).toBeLessThan(1e-8);
    expect(splitAtCrossings([first], [line(112.8, 215.4, 145.8, 259.4)])).toHaveLength(1);
  });

  it('two on one circle as well; an arc is split by its own chord nowhere but at its ends', () => {
    const [half, quarter] = [arc(17, 3, -3, 3, 7, 3, 1), arc(7, 13, 7, -7, 7, 3, 1)];
    expect(ends(splitAtCrossings([half], [quarter]))).toEqual([
      [17, 3, 7, 13],
      [7, 13, -3, 3],
    ]);
    expect(splitAtCrossings([half], [line(17, 3, -3, 3)])).toHaveLength(1);
  });

  it('two that are parallel and beside each other are not split', () => {
    expect(splitAtCrossings([line(0, 0, 30, 40), line(12, 16.001, 45, 60.001)], [])).toHaveLength(2);
  });
});

describe('an arc that rounding ends a hair before it starts', () => {
  it.each([
    ['upper', 4, -1e-12],
    ['lower', -4, 1e-12],
  ])('has no width, and is not sent round once more, on the %s half of its circle', (_, y, hair) => {
    const pieces: Piece[] = [];
    splitCurve(arc(3, y, 3 + hair, y, 0, 0, -1), pieces);
    splitCurve(arc(3 + hair, y, 3, y, 0, 0, 1), pieces);
    expect(pieces).toEqual([]);
  });
});

describe('strips', () => {
  it.each([
    ['first', 0],
    ['second', 1],
  ])(
    'part where an arc sets off upright so near below another thread that they cross at its start, told of %s',
    (_, of) => {
      // The arc crosses the level 1e-8 mm above its start 5e-17 mm beyond it: nearer than two figures can be told apart there.
      const rising = [line(100, 5, 110, 5), arc(110, 5, 111, 6, 111, 5, -1), line(111, 6, 112, 6)];
      const heightOf = (x: number) => (x <= 110 ? 5 : x < 111 ? 5 + Math.sqrt(1 - (x - 111) ** 2) : 6);
      const threads: Thread[] = [];
      const add = [() => threadChain(rising, 0, threads), () => threads.push(levelThread(100, 112, 5 + 1e-8, 1, 1))];
      add[of]!();
      add[1 - of]!();
      walkStrips(threads, 100, 112, ({ left, right, order }) => {
        for (const u of [0.1, 0.5, 0.9]) {
          const rises = heightOf(left + u * (right - left)) > 5 + 1e-8;
          expect(order.map((thread) => thread.of)).toEqual(rises ? [1, 0] : [0, 1]);
        }
      });
    },
  );

  // Thread k lies at height k from x = 100 + a place of its own to 300; the places come in no order.
  it.each([5, 24, 25, 60])('hold every one of %i threads from where it starts, lowest first', (count) => {
    const starts = Array.from({ length: count }, (_, k) => 100 + ((k * 37) % 61));
    const threads = starts.map((x, k) => levelThread(x, 300, k, k, k));
    let strips = 0;
    walkStrips(threads, 90, 310, ({ order, left, right }) => {
      strips++;
      const there = threads.filter(({ x0, x1 }) => x0 <= left && x1 >= right);
      expect(
        order.map(({ id }) => id),
        `from ${left} to ${right}`,
      ).toEqual(there.map(({ id }) => id));
    });
    expect(strips).toBe(count + 2);
  });
});

describe('two threads over the strip from 100 to 104', () => {
  const low = levelThread(90, 110, 5, 0, 0);
  const lies = (chain: readonly Curve[]) => {
    const [high] = threadsOf(chain, 1, null);
    const strip: Strip = {
      number: 0,
      left: 100,
      right: 104,
      order: [low, high!],
      heights: [5, threadHeight(high!, 102)],
    };
    return liesOn(strip, 0, 1);
  };

  it('coincide where they do so throughout', () => {
    expect(lies([line(95, 5, 103, 5), line(103, 5, 109, 5)])).toBe(true);
  });

  it.each([
    ['in its left part', [line(95, 5.8, 101.5, 5), line(101.5, 5, 108, 5)]],
    ['in its right part', [line(95, 5, 102.5, 5), line(102.5, 5, 108, 6)]],
    ['on both sides of a touch in its middle', [arc(98, 7, 106, 7, 102, 10, 1)]],
  ])('do not where they part %s', (_, chain) => {
    expect(lies(chain)).toBe(false);
  });
});

describe('a thread’s curves over a range', () => {
  // Depths below a face at 24: a slope, a round and a slope, from x = 10 to 30.
  const chain = [line(10, 9, 16, 6), arc(16, 6, 24, 6, 20, 3, -1), line(24, 6, 30, 2)];
  it.each([
    ['as heights', null],
    ['as depths below a face', 24],
  ])('given %s have the thread’s heights all along, in either direction', (_, depthFrom) => {
    const [thread] = threadsOf(chain, 0, depthFrom);
    for (const leftwards of [false, true])
      chain.forEach(({ x0, x1 }, k) => {
        const [from, to] = [Math.max(x0, 12), Math.min(x1, 28)];
        const curve = curveOver(thread!, k, 12, 28, leftwards);
        expect([curve.x0, curve.x1]).toEqual(leftwards ? [to, from] : [from, to]);
        for (const u of [0, 0.3, 0.5, 0.8, 1]) {
          const { x, y } = pointAt(curve, u);
          expect(y, `at ${x}`).toBeCloseTo(threadHeight(thread!, x), 12);
        }
      });
  });
});

function threadsOf(chain: readonly Curve[], of: number, depthFrom: number | null): Thread[] {
  const threads: Thread[] = [];
  threadChain(chain, of, threads, depthFrom);
  return threads;
}
