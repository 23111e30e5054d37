import {
  type Chain,
  type Curve,
  curveOver,
  lastPlace,
  placeAt,
  SAME_LENGTH,
  threadHeight,
  withEnds,
} from '@fielded/geometry';
import type { Boundary, Section } from './section.ts';

/** One end of a boundary of the wood. */
interface End {
  readonly boundary: Boundary;
  readonly x: number;
  readonly y: number;
  readonly isRight: boolean;
  /** The end it meets by an upright step, often of no height. */
  partner: End | undefined;
  /** The other end of the same boundary. */
  opposite: End | undefined;
}

/**
 * The section's outline as closed chains, each run with the wood on its left (anticlockwise; holes clockwise).
 *
 * Every boundary of the wood ends where a strip ends; at one x the ends, sorted by height, belong together in pairs, since
 * wood lies between the first and the second of them on one side of that x only. So the outline always closes.
 */
export function traceOutline(section: Section): Chain[] {
  const ends = pairEnds(section);
  const loops: Chain[] = [];
  const used = new Set<Boundary>();
  for (const end of ends) {
    if (end.isRight || end.boundary.wood !== -1 || used.has(end.boundary)) continue;
    loops.push(traceLoop(end, used));
  }
  return loops;
}

/** The ends of all boundaries of the wood, sorted by x and there by height, and paired: a counting sort over the stops, insertion among the few ends at one stop. */
function pairEnds({ boundaries }: Section): End[] {
  const woods = boundaries.filter(({ wood }) => wood !== 0);
  const offsets = countEnds(woods);
  const ends = new Array<End>(2 * woods.length);
  for (const boundary of woods) {
    const { thread, x0, x1, first, end } = boundary;
    const left: End = {
      boundary,
      x: x0,
      y: threadHeight(thread, x0),
      isRight: false,
      partner: undefined,
      opposite: undefined,
    };
    const right: End = {
      boundary,
      x: x1,
      y: threadHeight(thread, x1),
      isRight: true,
      partner: undefined,
      opposite: left,
    };
    left.opposite = right;
    insertByHeight(ends, left, offsets, first);
    insertByHeight(ends, right, offsets, end);
  }
  // At each stop the first end meets the second, the third the fourth, and so on.
  for (let i = 0; i + 1 < ends.length; i += 2) {
    ends[i]!.partner = ends[i + 1]!;
    ends[i + 1]!.partner = ends[i]!;
  }
  return ends;
}

/** Where the ends of each stop begin in the sorted list, and how many of them have been put there so far. */
interface Offsets {
  readonly start: Int32Array;
  readonly filled: Int32Array;
}

function countEnds(woods: readonly Boundary[]): Offsets {
  const stops = woods.reduce((most, { end }) => Math.max(most, end), 0) + 1;
  const start = new Int32Array(stops + 1);
  for (const { first, end } of woods) {
    start[first + 1]!++;
    start[end + 1]!++;
  }
  for (let i = 1; i <= stops; i++) start[i]! += start[i - 1]!;
  return { start, filled: new Int32Array(stops) };
}

function insertByHeight(ends: End[], end: End, { start, filled }: Offsets, stop: number): void {
  const from = start[stop]!;
  let k = from + filled[stop]!++;
  while (k > from && ends[k - 1]!.y > end.y) {
    ends[k] = ends[k - 1]!;
    k--;
  }
  ends[k] = end;
}

/** Follows boundaries and upright steps from the left end of a floor until it comes back to it. */
function traceLoop(start: End, used: Set<Boundary>): Chain {
  const loop: Curve[] = [];
  let end = start;
  do {
    used.add(end.boundary);
    const far = end.opposite!;
    appendBoundary(loop, end);
    const next = far.partner!;
    if (Math.abs(next.y - far.y) > SAME_LENGTH) {
      loop.push({ x0: far.x, y0: far.y, x1: next.x, y1: next.y, cx: 0, cy: 0, r: 0, turn: 0 });
    }
    end = next;
  } while (end !== start);
  return loop;
}

/** Appends a boundary's curves in the direction of travel; where the first continues the last curve, the two become one. */
function appendBoundary(loop: Curve[], { boundary, isRight }: End): void {
  const { thread, x0, x1 } = boundary;
  const first = placeAt(thread, x0);
  const last = lastPlace(thread, first, x1);
  for (let k = first; k <= last; k++) {
    const curve = curveOver(thread, isRight ? first + last - k : k, x0, x1, isRight);
    const before = loop[loop.length - 1];
    if (before !== undefined && continues(before, curve))
      loop[loop.length - 1] = withEnds(before, before.x0, before.y0, curve.x1, curve.y1);
    else loop.push(curve);
  }
}

/** Whether a curve continues the one before it: on the same circle, or level at the same height. */
function continues(last: Curve, next: Curve): boolean {
  if (last.turn !== next.turn || last.x1 !== next.x0 || last.y1 !== next.y0) return false;
  if (last.turn !== 0) return last.cx === next.cx && last.cy === next.cy && last.r === next.r;
  return last.y0 === last.y1 && next.y0 === next.y1;
}
