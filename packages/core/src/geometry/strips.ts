import { STRIP_WIDTH } from '../tolerance.ts';
import { meetCarriers } from './crossing.ts';
import { heightAt, type Piece } from './piece.ts';

/**
 * One strip: between `left` and `right` the pieces in `order`, lowest first, do not cross; `heights` are theirs at its
 * middle, mm. Strips are numbered from 0; strip k ends where strip k + 1 starts.
 */
export interface Strip {
  number: number;
  left: number;
  right: number;
  readonly order: Piece[];
  readonly heights: number[];
}

/**
 * Walks the plane between x = `from` and x = `to` in strips in which the pieces neither start, stop nor cross, so that
 * everything about the regions they bound can be read off their order. Visits them left to right; the strip handed over
 * is reused: read it, do not keep it.
 *
 * Pieces of one region must not cross each other; pieces of different regions may cross, touch or lie on one another in
 * any way. A strip narrower than 1e-12 mm is folded into its neighbour, so an area read off the strips is wrong by less
 * than that times the height, and nothing here can fail. Method: a sweep by left ends for the crossings, then one over
 * all stops, keeping the order by insertion; near n log n while few pieces overlie each other, as in a section.
 */
export function walkStrips(
  pieces: readonly Piece[],
  from: number,
  to: number,
  visit: (strip: Readonly<Strip>) => void,
): void {
  const waiting = piecesByStart(pieces, from, to);
  const stops = collectStops(waiting, from, to);
  const strip: Strip = { number: 0, left: from, right: from, order: [], heights: [] };
  const { order } = strip;
  let next = 0;
  for (let i = 0; i < stops.length; i++) {
    const right = stops[i]!;
    const { left } = strip;
    if (right - left <= STRIP_WIDTH && i < stops.length - 1) continue;
    let count = 0;
    for (let k = 0; k < order.length; k++) {
      const p = order[k]!;
      if (p.x1 > left + STRIP_WIDTH) order[count++] = p;
    }
    if (count < order.length) order.length = count;
    while (next < waiting.length && waiting[next]!.x0 <= left + STRIP_WIDTH) {
      const p = waiting[next++]!;
      if (p.x1 > left + STRIP_WIDTH) order.push(p);
    }
    strip.right = right;
    sortByHeight(strip);
    visit(strip);
    strip.number++;
    strip.left = right;
  }
}

/** Pieces that reach between `from` and `to`, by left end. */
function piecesByStart(pieces: readonly Piece[], from: number, to: number): Piece[] {
  const inside = pieces.filter((p) => p.x1 > from && p.x0 < to);
  return inside.sort((p, q) => p.x0 - q.x0);
}

/** Every x where a piece starts or stops or two regions' boundaries cross, ascending, the last being `to`. */
function collectStops(byStart: readonly Piece[], from: number, to: number): Float64Array {
  const crossings: number[] = [];
  const stops = new Float64Array(2 * byStart.length + 1);
  let count = 0;
  stops[count++] = to;
  const met: number[] = [];
  const present: Piece[] = [];
  for (const p of byStart) {
    let still = 0;
    for (let k = 0; k < present.length; k++) {
      const q = present[k]!;
      if (q.x1 <= p.x0) continue;
      present[still++] = q;
      if (q.of !== p.of && q.low <= p.high && p.low <= q.high) pushCrossings(p, q, met, crossings, from, to);
    }
    if (still < present.length) present.length = still;
    present.push(p);
    if (p.x0 > from) stops[count++] = p.x0;
    if (p.x1 < to) stops[count++] = p.x1;
  }
  const all = new Float64Array(count + crossings.length);
  all.set(stops.subarray(0, count));
  all.set(crossings, count);
  return all.sort();
}

/** Adds the x of each meeting of two pieces' carriers within both pieces: one that is not on them is a stop too many, no harm. */
function pushCrossings(p: Piece, q: Piece, met: number[], stops: number[], from: number, to: number): void {
  const least = Math.max(p.x0, q.x0, from);
  const most = Math.min(p.x1, q.x1, to);
  met.length = 0;
  meetCarriers(p, q, met);
  for (let i = 0; i < met.length; i += 2) {
    const x = met[i]!;
    if (x > least && x < most) stops.push(x);
  }
}

/** Orders a strip's pieces by their height at its middle. Insertion sort: from strip to strip the order changes little. */
function sortByHeight({ order, heights, left, right }: Strip): void {
  const x = (left + right) / 2;
  if (heights.length !== order.length) heights.length = order.length;
  for (let i = 0; i < order.length; i++) {
    const p = order[i]!;
    const height = heightAt(p, x);
    let k = i - 1;
    while (k >= 0 && heights[k]! > height) {
      order[k + 1] = order[k]!;
      heights[k + 1] = heights[k]!;
      k--;
    }
    order[k + 1] = p;
    heights[k + 1] = height;
  }
}
