/** A function over a box of numbers, and an upper bound of it over any part of that box. */
export interface Bounded {
  readonly low: readonly number[];
  readonly high: readonly number[];
  readonly at: (place: readonly number[]) => number;
  /** No less than the function is anywhere between `low` and `high`; the closer, the faster. */
  readonly atMost: (low: readonly number[], high: readonly number[]) => number;
}

/** Parts of a box that are looked at before the search gives up and names the bound. */
const MOST_PARTS = 4000;
/** Parts narrower than this, mm or points of %, are not split again. */
const NARROWEST = 1e-11;

/**
 * The greatest of a function over a box, to `tolerance`, by branch and bound (Land and Doig 1960; formula S7): parts whose bound
 * does not exceed the greatest value found are left out, the others halved. It cannot miss a peak, however narrow. After 4000
 * parts it gives the greatest bound that is left, which no place exceeds.
 */
export function greatest({ low, high, at, atMost }: Bounded, tolerance: number): number {
  let best = Number.NEGATIVE_INFINITY;
  for (const corner of cornersOf(low, high)) best = Math.max(best, at(corner));
  const open = [{ low, high, bound: atMost(low, high) }];
  for (let parts = 0; open.length > 0; parts++) {
    const part = open.pop()!;
    if (part.bound <= best + tolerance) continue;
    if (parts >= MOST_PARTS) return open.reduce((most, { bound }) => Math.max(most, bound), part.bound);
    const widest = widestOf(part.low, part.high, low, high);
    if (widest < 0) continue;
    const middle = (part.low[widest]! + part.high[widest]!) / 2;
    const halves = [
      { low: part.low, high: part.high.with(widest, middle) },
      { low: part.low.with(widest, middle), high: part.high },
    ].map((half) => ({ ...half, bound: Math.min(part.bound, atMost(half.low, half.high)) }));
    for (const half of halves) best = Math.max(best, at(half.low.map((from, i) => (from + half.high[i]!) / 2)));
    best = Math.max(best, at(part.low.map((from, i) => (i === widest ? middle : from))));
    // The more promising half last, so that it is looked at first.
    halves.sort((a, b) => a.bound - b.bound);
    open.push(...halves);
  }
  return best;
}

/** The corners of a box of up to four numbers; of a larger one, its lowest and its highest. */
function cornersOf(low: readonly number[], high: readonly number[]): (readonly number[])[] {
  if (low.length > 4) return [low, high];
  return Array.from({ length: 2 ** low.length }, (_, bits) =>
    low.map((from, i) => (bits & (1 << i) ? high[i]! : from)),
  );
}

/** Which number is widest against the whole box; -1 where all are too narrow to be halved. */
function widestOf(
  low: readonly number[],
  high: readonly number[],
  leastLow: readonly number[],
  mostHigh: readonly number[],
): number {
  let widest = -1;
  let most = 0;
  for (let i = 0; i < low.length; i++) {
    const width = high[i]! - low[i]!;
    const share = width / (mostHigh[i]! - leastLow[i]!);
    if (width > NARROWEST && share > most) {
      most = share;
      widest = i;
    }
  }
  return widest;
}
