import { meetCarriers } from '../curve/crossing.ts';
import { heightAt, highOf, lowOf, type Piece } from '../curve/piece.ts';
import { SAME_LENGTH, SLIVER, STRIP_WIDTH } from '../curve/tolerance.ts';
import { pieceAt, placeAt, type Thread, threadHeight } from './thread.ts';

/**
 * One strip: between `left` and `right` the threads in `order`, lowest first, do not cross. `heights` holds the height of each in the
 * middle of the strip, mm, at the same places. Strips are numbered from 0; strip k ends where strip k + 1 starts.
 */
export interface Strip {
  number: number;
  left: number;
  right: number;
  readonly order: Thread[];
  readonly heights: number[];
}

/**
 * Divides the plane between x = `from` and x = `to` into strips in which no thread starts, ends or crosses another, so that the
 * regions they bound can be read off the order of the threads. Calls `visit` for each strip from left to right. The strip is one
 * object that is used again: read it, do not keep it.
 *
 * Threads of one region must not cross each other; threads of different regions may cross, touch or coincide in any way. A strip
 * narrower than 1e-12 mm is joined to its neighbour, so an area read off the strips is wrong by less than 1e-12 mm times the
 * height. There is no input on which it fails. Method: a sweep over the left ends finds the crossings, a second sweep over all stops
 * keeps the threads in order by insertion. Time: one pass over the pieces of two threads where their heights overlap, next to none
 * where they do not; a section has a handful of threads.
 */
export function walkStrips(
  threads: readonly Thread[],
  from: number,
  to: number,
  visit: (strip: Readonly<Strip>) => void,
): void {
  const waiting = byLeftEnds(threads, from, to);
  const stops = collectStops(waiting, from, to);
  const strip: Strip = { number: 0, left: from, right: from, order: [], heights: [] };
  const { order } = strip;
  let next = 0;
  for (let i = 0; i < stops.length; i++) {
    // A stop as near as that to the end is the end.
    const right = to - stops[i]! <= STRIP_WIDTH ? to : stops[i]!;
    const { left } = strip;
    // Too narrow to count? Then it belongs to the next strip.
    if (right - left <= STRIP_WIDTH) continue;
    // Remove the threads that have ended, and add those that start. The same differences as above: what reaches over the strip is in it.
    let count = 0;
    for (const t of order) if (t.x1 - left > STRIP_WIDTH) order[count++] = t;
    while (order.length > count) order.pop();
    while (next < waiting.length && waiting[next]!.x0 - left <= STRIP_WIDTH) {
      const t = waiting[next++]!;
      if (t.x1 - left > STRIP_WIDTH) order.push(t);
    }
    strip.right = right;
    sortByHeight(strip);
    visit(strip);
    strip.number++;
    strip.left = right;
  }
}

/** The threads that reach between `from` and `to`, sorted by their left ends. */
function byLeftEnds(threads: readonly Thread[], from: number, to: number): Thread[] {
  const waiting: Thread[] = [];
  for (const t of threads) if (t.x1 > from && t.x0 < to) waiting.push(t);
  if (waiting.length > FEW) return waiting.sort((s, t) => s.x0 - t.x0);
  for (let i = 1; i < waiting.length; i++) {
    const t = waiting[i]!;
    let k = i;
    for (; k > 0 && waiting[k - 1]!.x0 > t.x0; k--) waiting[k] = waiting[k - 1]!;
    waiting[k] = t;
  }
  return waiting;
}

/** Sorts numbers in ascending order, in place where there are few of them. */
function ascending(numbers: number[]): ArrayLike<number> {
  if (numbers.length > FEW) return Float64Array.from(numbers).sort();
  for (let i = 1; i < numbers.length; i++) {
    const x = numbers[i]!;
    let k = i;
    for (; k > 0 && numbers[k - 1]! > x; k--) numbers[k] = numbers[k - 1]!;
    numbers[k] = x;
  }
  return numbers;
}

/** Up to so many threads or stops, more than most sections have, insertion is faster than a call to sort. */
const FEW = 24;

/** Every x at which a thread starts or ends or threads of two regions cross, in ascending order; the last is `to`. */
function collectStops(byStart: readonly Thread[], from: number, to: number): ArrayLike<number> {
  const stops: number[] = [to];
  const present: Thread[] = [];
  for (const t of byStart) {
    // Only threads that have not ended yet can cross this one.
    let still = 0;
    for (const s of present) {
      if (s.x1 <= t.x0) continue;
      present[still++] = s;
      if (s.of !== t.of && overlap(s.low, s.high, t.low, t.high)) pushCrossings(s, t, stops, from, to);
    }
    while (present.length > still) present.pop();
    present.push(t);
    if (t.x0 > from) stops.push(t.x0);
    if (t.x1 < to) stops.push(t.x1);
  }
  return ascending(stops);
}

/** Whether two ranges of height overlap or come within 1e-9 mm of each other. */
function overlap(lowA: number, highA: number, lowB: number, highB: number): boolean {
  return lowA <= highB + SAME_LENGTH && lowB <= highA + SAME_LENGTH;
}

/** Adds a stop wherever two threads may change order; walks along the pieces of both at once. */
function pushCrossings(s: Thread, t: Thread, stops: number[], from: number, to: number): void {
  const start = Math.max(s.x0, t.x0, from);
  const end = Math.min(s.x1, t.x1, to);
  let i = placeAt(s, start);
  let k = placeAt(t, start);
  while (i < s.end && k < t.end) {
    const endOfP = s.pieces[i]!.x1;
    const endOfQ = t.pieces[k]!.x1;
    const left = Math.max(s.pieces[i]!.x0, t.pieces[k]!.x0, start);
    if (left >= end) return;
    const p = pieceAt(s, i);
    const q = pieceAt(t, k);
    // Pieces that are never at one height cannot cross.
    if (overlap(lowOf(p), highOf(p), lowOf(q), highOf(q))) {
      pushMeetings(p, q, left, Math.min(endOfP, endOfQ, end), stops);
    }
    // Go on along the thread whose piece ends first.
    if (endOfP <= endOfQ) i++;
    else k++;
  }
}

/**
 * Adds a stop at each crossing of two pieces over [left, right], and at an end where they touch there. Rounding may put a crossing
 * just outside; then the pieces have changed order without one, and both ends become stops. A stop too many does no harm, a stop
 * too few would.
 */
function pushMeetings(p: Piece, q: Piece, left: number, right: number, stops: number[]): void {
  const before = heightAt(p, left) - heightAt(q, left);
  const after = heightAt(p, right) - heightAt(q, right);
  const met: number[] = [];
  meetCarriers(p, q, met);
  let crossed = false;
  for (let m = 0; m < met.length; m += 2) {
    const x = met[m]!;
    if (x <= left || x >= right) continue;
    stops.push(x);
    crossed = !crossed;
  }
  const changed = before > 0 !== after > 0;
  if (Math.abs(before) <= SAME_LENGTH || changed !== crossed) stops.push(left);
  if (Math.abs(after) <= SAME_LENGTH || changed !== crossed) stops.push(right);
}

/**
 * Sorts a strip's threads by their height in its middle, by insertion: the order changes little from strip to strip. Two threads of
 * one region may coincide in the middle and part elsewhere, since where they part there is no stop: then their heights at both
 * ends of the strip decide.
 */
function sortByHeight({ order, heights, left, right }: Strip): void {
  const x = (left + right) / 2;
  for (let i = 0; i < order.length; i++) {
    const t = order[i]!;
    const height = threadHeight(t, x);
    let k = i - 1;
    while (k >= 0) {
      const s = order[k]!;
      const tied = s.of === t.of && Math.abs(heights[k]! - height) <= SLIVER;
      if (tied ? endHeights(s, left, right) <= endHeights(t, left, right) : heights[k]! <= height) break;
      order[k + 1] = order[k]!;
      heights[k + 1] = heights[k]!;
      k--;
    }
    order[k + 1] = t;
    heights[k + 1] = height;
  }
}

function endHeights(t: Thread, left: number, right: number): number {
  return threadHeight(t, left) + threadHeight(t, right);
}

/** Two threads of one region that are further apart than this at an end of a strip, mm, do not coincide all the way. */
const PARTED = 1e-6;

/**
 * Whether two of a strip's threads, given by their places in its order, coincide over the whole strip but for rounding. Two threads
 * that only touch somewhere inside it do not.
 */
export function liesOn({ order, heights, left, right }: Readonly<Strip>, below: number, above: number): boolean {
  if (heights[above]! - heights[below]! > SLIVER) return false;
  const [low, high] = [order[below]!, order[above]!];
  const apart = (x: number) => threadHeight(high, x) - threadHeight(low, x);
  if (low.of === high.of && Math.max(apart(left), apart(right)) > PARTED) return false;
  return apart(left + (right - left) / 4) <= SLIVER && apart(right - (right - left) / 4) <= SLIVER;
}
