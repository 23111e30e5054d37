import {
  levelThread,
  type Moments,
  momentsUnder,
  SAME_LENGTH,
  type Thread,
  threadChain,
  walkStrips,
} from '@fielded/geometry';
import { type ClearedRegion, STOCK, StripReader } from './strip-reader.ts';

/**
 * A stretch of a thread over [x0, x1] and what it bounds: +1 what lies below it, -1 what lies above it, 0 neither. `wood` says this of
 * the wood that is left, `gone` of what is removed, `own` of what its own cut would take from the full stock. `outer`: no wood lies
 * beyond it, so that it is the section's surface.
 */
export interface Boundary {
  readonly thread: Thread;
  readonly x0: number;
  readonly x1: number;
  /** The number of its first strip, and of the strip after its last. */
  readonly first: number;
  readonly end: number;
  readonly wood: -1 | 0 | 1;
  readonly gone: -1 | 0 | 1;
  readonly own: -1 | 0 | 1;
  readonly outer: boolean;
}

/** An interval of x, mm. */
interface Span {
  readonly from: number;
  readonly to: number;
}

/** A panel's edge after its cuts. Section coordinates: x in from the finished edge, y up from the back face, mm. */
export interface Section {
  readonly thickness: number;
  readonly width: number;
  /** In order of their left ends. */
  readonly boundaries: readonly Boundary[];
  /** The stock that is left and the stock that is removed over 0 ≤ x ≤ width, each computed from its own boundaries. */
  readonly wood: Moments;
  readonly removed: Moments;
  /** What each cut would take from the full stock alone, mm². */
  readonly takenAlone: readonly number[];
  /** Whether two of the cuts take some of the same wood. */
  readonly overlapping: boolean;
  /** Where no wood is left, and where two or more layers of it lie one above another. */
  readonly gaps: readonly Span[];
  readonly layered: readonly Span[];
}

/**
 * Cuts the stock, a rectangle `width` × `thickness` mm, with any number of cleared regions.
 *
 * The section is read off strips (see `walkStrips`): in each strip the stock's two faces and the edges of the regions lie one above
 * another, and wood is what lies inside the stock and inside no region. Boundaries keep their lines and arcs, so areas and moments are
 * exact to rounding (formulas 2 and 5). The order of the regions makes no difference to the section. It fails on no regions that are
 * finite.
 */
export function cutSection(thickness: number, width: number, regions: readonly ClearedRegion[]): Section {
  const threads = placeThreads(thickness, width, regions);
  const reading = new StripReader(regions);
  const takenAlone: number[] = [];
  for (let k = 0; k < regions.length; k++) takenAlone.push(0);
  const boundaries: Writable<Boundary>[] = [];
  const latest: (Writable<Boundary> | undefined)[] = [];
  for (let k = 0; k < threads.length; k++) latest.push(undefined);
  const gaps: Writable<Span>[] = [];
  const layered: Writable<Span>[] = [];
  let overlapping = false;

  walkStrips(threads, 0, width, (strip) => {
    reading.read(strip);
    const { number, left, right, order } = strip;
    if (reading.layers === 0) extendSpan(gaps, left, right);
    if (reading.layers > 1) extendSpan(layered, left, right);
    if (reading.overlapping) overlapping = true;
    for (const k of reading.throughFront) takenAlone[k - 1]! += thickness * (right - left);
    // Does each thread bound the same as in the strip before? Then its boundary grows, else a new one begins.
    for (let i = 0; i < order.length; i++) {
      const thread = order[i]!;
      const { wood, gone, own, outer } = reading.roles[i]!;
      const b = latest[thread.id];
      if (b?.end === number && b.wood === wood && b.gone === gone && b.own === own && b.outer === outer) {
        b.x1 = right;
        b.end = number + 1;
      } else if (wood !== 0 || gone !== 0 || own !== 0) {
        const begun = { thread, x0: left, x1: right, first: number, end: number + 1, wood, gone, own, outer };
        latest[thread.id] = begun;
        boundaries.push(begun);
      }
    }
  });

  // The areas are those under the tops less those under the floors.
  const wood: Moments = { area: 0, x: 0, y: 0 };
  const removed: Moments = { area: 0, x: 0, y: 0 };
  for (const b of boundaries) {
    const under = momentsUnder(b.thread, b.x0, b.x1);
    addTimes(wood, under, b.wood);
    addTimes(removed, under, b.gone);
    if (b.thread.of !== STOCK) takenAlone[b.thread.of - 1]! += b.own * under.area;
  }
  return { thickness, width, boundaries, wood, removed, takenAlone, overlapping, gaps, layered };
}

type Writable<T> = { -readonly [K in keyof T]: T[K] };

/** The stock's faces and every region's edge as threads in section coordinates. */
function placeThreads(thickness: number, width: number, regions: readonly ClearedRegion[]): Thread[] {
  const threads = [levelThread(0, width, 0, STOCK, 0), levelThread(0, width, thickness, STOCK, 1)];
  for (let k = 0; k < regions.length; k++) {
    const { side, edge } = regions[k]!;
    threadChain(edge, k + 1, threads, side === 'front' ? thickness : null);
  }
  return threads;
}

/** Lengthens the last span to `to`, or begins a new one. */
function extendSpan(spans: Writable<Span>[], from: number, to: number): void {
  const last = spans[spans.length - 1];
  if (last !== undefined && from - last.to <= SAME_LENGTH) last.to = to;
  else spans.push({ from, to });
}

function addTimes(sum: Moments, m: Moments, times: number): void {
  sum.area += times * m.area;
  sum.x += times * m.x;
  sum.y += times * m.y;
}
