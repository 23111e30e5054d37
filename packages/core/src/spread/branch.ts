/** What is known of a part of a box: the function's value in its middle, and one that it nowhere exceeds there. */
interface Looked {
  readonly value: number;
  readonly bound: number;
}

/** A function over a box of numbers, looked at part by part. */
export interface BoxFunction {
  readonly low: readonly number[];
  readonly high: readonly number[];
  readonly at: (place: readonly number[]) => number;
  /**
   * Value in the middle of the part between `low` and `high`, and a bound over all of it: the closer, the faster the search. A
   * value that does not exceed `best` need not be exact, as long as it does not either.
   */
  readonly look: (low: readonly number[], high: readonly number[], best: number) => Looked;
}

/** Parts that may still be looked at, shared by searches inside one another. */
export interface PartsLeft {
  parts: number;
}

/** Parts narrower than this, mm or points of %, are not split again. */
const NARROWEST = 1e-11;

/**
 * The greatest of a function over a box, to `tolerance`, by branch and bound (Land and Doig 1960; formula S7): parts whose bound
 * does not exceed the greatest value found are left out, of the others the one with the greatest bound is halved. It cannot miss a
 * peak, however narrow. Once the effort is spent it gives the greatest bound that is left, which no place exceeds.
 */
export function greatest({ low, high, at, look }: BoxFunction, tolerance: number, effort: PartsLeft): number {
  let best = Number.NEGATIVE_INFINITY;
  for (const corner of cornersOf(low, high)) best = Math.max(best, at(corner));
  const lookAt = (from: readonly number[], to: readonly number[], most: number): Part => {
    const { value, bound } = look(from, to, best);
    best = Math.max(best, value);
    return { low: from, high: to, bound: Math.min(most, bound) };
  };
  const open = [lookAt(low, high, Number.POSITIVE_INFINITY)];
  for (;;) {
    const part = takeMost(open);
    if (part === undefined || part.bound <= best + tolerance) return best;
    if (effort.parts <= 0) return part.bound;
    const halves = halve(part, lookAt);
    effort.parts -= 2 * part.low.length;
    for (const half of halves) if (half.bound > best + tolerance) open.push(half);
  }
}

interface Part {
  readonly low: readonly number[];
  readonly high: readonly number[];
  readonly bound: number;
}

/** Takes the part with the greatest bound out of a list. */
function takeMost(open: Part[]): Part | undefined {
  let most = 0;
  for (let i = 1; i < open.length; i++) if (open[i]!.bound > open[most]!.bound) most = i;
  const part = open[most];
  const last = open.pop();
  if (last !== undefined && most < open.length) open[most] = last;
  return part;
}

/** The halves of a part across the number that makes most of its bound; none of one that is too narrow. */
function halve(
  { low, high, bound }: Part,
  lookAt: (low: readonly number[], high: readonly number[], most: number) => Part,
): Part[] {
  let halves: Part[] = [];
  let least = Number.POSITIVE_INFINITY;
  let widest = 0;
  for (let i = 0; i < low.length; i++) {
    const width = high[i]! - low[i]!;
    if (!(width > NARROWEST)) continue;
    const middle = (low[i]! + high[i]!) / 2;
    const pair = [lookAt(low, high.with(i, middle), bound), lookAt(low.with(i, middle), high, bound)];
    const sum = pair[0]!.bound + pair[1]!.bound;
    // On a tie split the wider number, or one that does not matter yet would never be split.
    if (halves.length === 0 || sum < least || (sum === least && width > widest)) {
      halves = pair;
      least = sum;
      widest = width;
    }
  }
  return halves;
}

/**
 * The least of a function over from ≤ x ≤ to, to `tolerance`, and where: the same search along a line, for one that is asked often.
 * It stops at the first value that does not exceed `enough`.
 *
 * `least` gives what the function is no less than between two places, and its value where both are one.
 */
export function leastAlong(
  least: (a: number, b: number) => number,
  from: number,
  to: number,
  tolerance: number,
  enough: number,
  effort: PartsLeft,
): { readonly x: number; readonly value: number } {
  let x = from;
  let value = least(from, from);
  const take = (at: number) => {
    const found = least(at, at);
    if (found < value) {
      value = found;
      x = at;
    }
  };
  take(to);
  // Parts still to look at: both ends and the bound of each, one after the other.
  const open = [from, to, least(from, to)];
  while (open.length > 0 && value > enough) {
    const bound = open.pop()!;
    const b = open.pop()!;
    const a = open.pop()!;
    if (bound >= value - tolerance || b - a <= NARROWEST) continue;
    if (effort.parts <= 0) return { x, value: leastBound(open, bound) };
    effort.parts -= 2;
    const middle = (a + b) / 2;
    take(middle);
    const left = least(a, middle);
    const right = least(middle, b);
    if (left < right) open.push(middle, b, right, a, middle, left);
    else open.push(a, middle, left, middle, b, right);
  }
  return { x, value };
}

function leastBound(open: readonly number[], bound: number): number {
  let least = bound;
  for (let i = 2; i < open.length; i += 3) least = Math.min(least, open[i]!);
  return least;
}

/** The corners of a box of up to four numbers; of a larger one, its lowest and its highest. */
function cornersOf(low: readonly number[], high: readonly number[]): (readonly number[])[] {
  const wide = low.flatMap((from, i) => (high[i]! > from ? [i] : []));
  if (wide.length > 4) return [low, high];
  return Array.from({ length: 2 ** wide.length }, (_, bits) =>
    wide.reduce((corner, i, bit) => (bits & (1 << bit) ? corner.with(i, high[i]!) : corner), low),
  );
}
