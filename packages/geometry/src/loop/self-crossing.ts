import { crossings } from '../curve/crossing.ts';
import type { Chain, Curve } from '../curve/curve.ts';
import { curveBox } from '../curve/curve-box.ts';
import type { Point } from '../curve/point.ts';
import { SAME_LENGTH } from '../curve/tolerance.ts';

/** Where two directions differ by less than this (radians) the curves touch and do not cross. */
const SAME_DIRECTION = 1e-4;

/** After so many comparisons of boxes a chain counts as tangled: some tens for each of 100 000 pieces. */
const MOST_COMPARISONS = 10_000_000;

/**
 * A point where a chain crosses itself, mm, the first that is found; null where it does not; 'tangled' where the search would take
 * too long.
 *
 * A chain that doubles back, touches itself or runs back along itself does not cross itself. Method: the chain is halved again and
 * again, and only halves whose boxes overlap are compared. Time grows with n log n where the parts of the chain lie apart, as in
 * profiles.
 */
export function findSelfCrossing(chain: Chain): Point | 'tangled' | null {
  const n = chain.length;
  if (n < 2) return null;
  let size = 1;
  while (size < n) size *= 2;
  const boxes = buildBoxes(chain, size);
  let comparisons = 0;
  // Pairs of nodes still to be compared; a node against itself stands for "within this half".
  const stack: number[] = [1, 1];
  while (stack.length > 0) {
    const q = stack.pop()!;
    const p = stack.pop()!;
    if (++comparisons > MOST_COMPARISONS) return 'tangled';
    // A half against itself: search each of its own halves, and the two against each other.
    if (p === q) {
      if (p >= size) continue;
      const left = 2 * p;
      stack.push(left, left, left + 1, left + 1, left, left + 1);
      continue;
    }
    if (apart(boxes, p, q)) continue;
    // Two single curves: do they cross? Else split the larger half.
    if (p >= size && q >= size) {
      const point = findCrossing(chain, p - size, q - size);
      if (point) return point;
    } else if (q >= size || (p < size && p <= q)) stack.push(2 * p, q, 2 * p + 1, q);
    else stack.push(p, 2 * q, p, 2 * q + 1);
  }
  return null;
}

/** The boxes of a binary tree over the chain, four numbers to a node (least x, least y, greatest x, greatest y); node 1 is the whole chain, node k has the halves 2k and 2k + 1. */
function buildBoxes(chain: Chain, size: number): Float64Array {
  const boxes = new Float64Array(8 * size);
  for (let i = 0; i < size; i++) {
    const c = chain[i];
    const box = c ? curveBox(c) : { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };
    boxes.set([box.x0, box.y0, box.x1, box.y1], 4 * (size + i));
  }
  for (let k = size - 1; k > 0; k--) {
    const left = 8 * k;
    const right = left + 4;
    boxes[4 * k] = Math.min(boxes[left]!, boxes[right]!);
    boxes[4 * k + 1] = Math.min(boxes[left + 1]!, boxes[right + 1]!);
    boxes[4 * k + 2] = Math.max(boxes[left + 2]!, boxes[right + 2]!);
    boxes[4 * k + 3] = Math.max(boxes[left + 3]!, boxes[right + 3]!);
  }
  return boxes;
}

function apart(boxes: Float64Array, p: number, q: number): boolean {
  const i = 4 * p;
  const j = 4 * q;
  return (
    boxes[i]! > boxes[j + 2]! + SAME_LENGTH ||
    boxes[j]! > boxes[i + 2]! + SAME_LENGTH ||
    boxes[i + 1]! > boxes[j + 3]! + SAME_LENGTH ||
    boxes[j + 1]! > boxes[i + 3]! + SAME_LENGTH
  );
}

function findCrossing(chain: Chain, i: number, j: number): Point | null {
  for (const point of crossings(chain[i]!, chain[j]!)) {
    const one = raysFrom(chain, i, point);
    const other = raysFrom(chain, j, point);
    if (one && other && interleave(one, other)) return point;
  }
  return null;
}

type Rays = readonly [number, number];

/** The two directions (radians) in which the chain leaves a point of its curve i, backwards and forwards; null at an end of the whole chain. */
function raysFrom(chain: Chain, i: number, { x, y }: Point): Rays | null {
  const c = chain[i]!;
  if (Math.hypot(x - c.x0, y - c.y0) <= 2 * SAME_LENGTH) {
    const before = chain[i - 1];
    return before ? [direction(before, before.x1, before.y1) + Math.PI, direction(c, c.x0, c.y0)] : null;
  }
  if (Math.hypot(x - c.x1, y - c.y1) <= 2 * SAME_LENGTH) {
    const after = chain[i + 1];
    return after ? [direction(c, c.x1, c.y1) + Math.PI, direction(after, after.x0, after.y0)] : null;
  }
  const along = direction(c, x, y);
  return [along + Math.PI, along];
}

function direction(c: Curve, x: number, y: number): number {
  if (c.turn === 0) return Math.atan2(c.y1 - c.y0, c.x1 - c.x0);
  return Math.atan2(c.turn * (x - c.cx), -c.turn * (y - c.cy));
}

/** Whether the rays of one pair lie on either side of the other pair, so that the chain passes from one side of itself to the other. */
function interleave([from, to]: Rays, [one, other]: Rays): boolean {
  const sector = turned(to - from);
  const a = turned(one - from);
  const b = turned(other - from);
  const near = (angle: number) => {
    const away = Math.min(angle, 2 * Math.PI - angle, Math.abs(angle - sector));
    return away < SAME_DIRECTION;
  };
  if (near(a) || near(b)) return false;
  return a < sector !== b < sector;
}

function turned(angle: number): number {
  const whole = 2 * Math.PI;
  return ((angle % whole) + whole) % whole;
}
