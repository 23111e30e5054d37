/**
 * Sharing sizes out among bins so that each holds at least `least` and at most `most`: the problem behind blanks, where each
 * panel's size is its width and what one saw cut beside it costs. All sizes are above 0.
 */
export interface Limits {
  readonly least: number;
  readonly most: number;
}

/** Sizes up to which the search is exact. */
export const EXACT = 24;

/** Steps after which a search gives up: under EXACT sizes far more than one needs, less for what a long list leaves. */
const MOST_STEPS = { exact: 400_000, rest: 700 };
const FILL_COST = 20;
/** Subsets that are looked at for one bin of a long list. */
const MOST_TRIES = 4_000;
const ROUNDING = 1e-9;

/**
 * The most bins that hold all of `sizes`, as places in the list; null where no number of bins does.
 *
 * Up to EXACT sizes exact, by bin completion: the bin of the largest size left is filled in every way that the slack allows,
 * fullest use first (after Martello and Toth's bin packing, turned round to cover). Above, the better of two ways: bins filled
 * one by one as near above `least` as can be found, the last EXACT sizes exactly; and sizes dealt out evenly.
 */
export function coverAll(sizes: readonly number[], limits: Limits): number[][] | null {
  const order = sizes.map((_, i) => i).sort((p, q) => sizes[q]! - sizes[p]!);
  const filled = fillOneByOne(sizes, order, limits);
  if (sizes.length <= EXACT) return filled;
  return dealEvenly(sizes, order, limits, filled?.length ?? 0) ?? filled;
}

/**
 * More than `atLeast` bins, as many as come out full when the sizes, the largest first, each go to the bin that holds least
 * (Graham's longest processing time, 1969); null where none do.
 */
function dealEvenly(
  sizes: readonly number[],
  order: readonly number[],
  { least, most }: Limits,
  atLeast: number,
): number[][] | null {
  let best: number[][] | null = null;
  // Fewer bins are easier to fill, down to those that would overflow: the most that come out full are found by halving.
  const overflowing = Math.ceil(sum(sizes, order) / most - ROUNDING) - 1;
  let [full, unknown] = [Math.max(atLeast, overflowing), mostBins(sizes, order, least)];
  while (full < unknown) {
    const count = Math.ceil((full + unknown) / 2);
    const bins = dealTo(count, sizes, order, { least, most });
    if (bins === null) unknown = count - 1;
    else [best, full] = [bins, count];
  }
  return best;
}

/** The sizes dealt out to so many bins; null where one does not come out between the limits. */
function dealTo(
  count: number,
  sizes: readonly number[],
  order: readonly number[],
  { least, most }: Limits,
): number[][] | null {
  const bins = Array.from({ length: count }, (): DealtBin => ({ places: [], total: 0 }));
  for (const i of order) {
    const bin = bins.reduce((emptiest, other) => (other.total < emptiest.total ? other : emptiest));
    bin.places.push(i);
    bin.total += sizes[i]!;
  }
  evenOut(bins, sizes, least);
  const full = bins.every(({ total }) => total >= least - ROUNDING && total <= most + ROUNDING);
  return full ? bins.map(({ places }) => places) : null;
}

/** Exchanges that are made at most before a number of bins is given up. */
const MOST_EXCHANGES = 400;

/** A bin while sizes are dealt out: places in the list and what they come to. */
interface DealtBin {
  places: number[];
  total: number;
}

/** Exchanges sizes between a bin that is not full and one that stays full with less, until all are full or nothing helps. */
function evenOut(bins: readonly DealtBin[], sizes: readonly number[], least: number): void {
  for (let n = 0; n < MOST_EXCHANGES; n++) {
    const short = bins.reduce((worst, bin) => (bin.total < worst.total ? bin : worst));
    const wanted = least - short.total;
    if (wanted <= ROUNDING) return;
    let best: { bin: DealtBin; mine: number; theirs: number; gain: number } | null = null;
    for (const bin of bins) {
      const spare = bin.total - least;
      if (bin === short || spare <= ROUNDING) continue;
      for (let m = 0; m < short.places.length; m++) {
        for (let t = 0; t < bin.places.length; t++) {
          const gain = sizes[bin.places[t]!]! - sizes[short.places[m]!]!;
          if (gain <= ROUNDING || gain > spare) continue;
          // The least exchange that fills the bin, else the greatest there is.
          const fills = gain >= wanted;
          const better = best === null || (fills ? best.gain < wanted || gain < best.gain : gain > best.gain);
          if (better) best = { bin, mine: m, theirs: t, gain };
        }
      }
    }
    if (best === null) return;
    const { bin, mine, theirs, gain } = best;
    [short.places[mine], bin.places[theirs]] = [bin.places[theirs]!, short.places[mine]!];
    short.total += gain;
    bin.total -= gain;
  }
}

function fillOneByOne(sizes: readonly number[], order: readonly number[], limits: Limits): number[][] | null {
  const bins: number[][] = [];
  let left = order;
  while (left.length > EXACT) {
    const bin = nearestBin(sizes, left, limits, MOST_TRIES);
    if (bin === null) return null;
    const taken = new Set(bin);
    const rest = left.filter((i) => !taken.has(i));
    // What is left over must still fill a bin.
    if (sum(sizes, rest) < limits.least - ROUNDING) break;
    bins.push(bin);
    left = rest;
  }
  const last = coverExactly(sizes, left, limits);
  return last === null ? null : [...bins, ...last];
}

/** More bins than this cannot be: the sum of the sizes allows no more, nor do the sizes that even the largest need to fill one. */
function mostBins(sizes: readonly number[], order: readonly number[], least: number): number {
  let each = 0;
  let reached = 0;
  while (each < order.length && reached < least - ROUNDING) reached += sizes[order[each++]!]!;
  if (reached < least - ROUNDING) return 0;
  return Math.min(Math.floor(sum(sizes, order) / least + ROUNDING), Math.floor(order.length / each));
}

/** Exact: from the most bins that the sum allows down to one. */
function coverExactly(sizes: readonly number[], order: readonly number[], limits: Limits): number[][] | null {
  const total = sum(sizes, order);
  for (let bins = mostBins(sizes, order, limits.least); bins > 0; bins--) {
    if (total > bins * limits.most + ROUNDING) return null;
    const found = new Completion(sizes, limits, order.length < sizes.length ? MOST_STEPS.rest : MOST_STEPS.exact).fill(
      order,
      bins,
    );
    if (found !== null) return found;
  }
  return null;
}

/** Fills a given number of bins with all sizes, bin by bin, remembering what cannot be filled. */
class Completion {
  readonly #sizes: readonly number[];
  readonly #limits: Limits;
  readonly #failed = new Set<string>();
  readonly #most: number;
  #steps = 0;

  constructor(sizes: readonly number[], limits: Limits, most: number) {
    this.#most = most;
    this.#sizes = sizes;
    this.#limits = limits;
  }

  fill(left: readonly number[], bins: number): number[][] | null {
    const total = sum(this.#sizes, left);
    const { least, most } = this.#limits;
    if (total < bins * least - ROUNDING || total > bins * most + ROUNDING || left.length < bins) return null;
    if (bins === 1) return [[...left]];
    // A bin that is filled costs about as much as so many sizes that are tried.
    this.#steps += FILL_COST;
    // Equal sizes are interchangeable: what failed with one set of sizes fails with the same sizes again.
    const key = `${bins} ${left.map((i) => this.#sizes[i]).join(' ')}`;
    if (this.#failed.has(key) || this.#steps > this.#most) return null;
    const slack = Math.min(most, least + (total - bins * least));
    const found = this.#complete(left, bins, slack);
    if (found === null) this.#failed.add(key);
    return found;
  }

  /** Tries every bin that holds the largest size left, the tightest first. */
  #complete(left: readonly number[], bins: number, most: number): number[][] | null {
    const candidates: { bin: number[]; total: number }[] = [];
    const sizes = this.#sizes;
    const grow = (bin: number[], total: number, from: number): void => {
      if (this.#steps++ > this.#most) return;
      if (total >= this.#limits.least - ROUNDING) candidates.push({ bin: [...bin], total });
      for (let k = from; k < left.length; k++) {
        const size = sizes[left[k]!]!;
        if (k > from && size === sizes[left[k - 1]!]) continue;
        if (total + size > most + ROUNDING) continue;
        bin.push(left[k]!);
        grow(bin, total + size, k + 1);
        bin.pop();
      }
    };
    const first = left[0]!;
    if (sizes[first]! <= most + ROUNDING) grow([first], sizes[first]!, 1);
    candidates.sort((p, q) => p.total - q.total);
    for (const { bin } of candidates) {
      const taken = new Set(bin);
      const rest = this.fill(
        left.filter((i) => !taken.has(i)),
        bins - 1,
      );
      if (rest !== null) return [bin, ...rest];
    }
    return null;
  }
}

/** The bin with the largest size left whose sum is nearest above `least`, among so many tries; null where none reaches it. */
function nearestBin(
  sizes: readonly number[],
  left: readonly number[],
  { least, most }: Limits,
  tries: number,
): number[] | null {
  let best: { bin: number[]; total: number } | null = null;
  let steps = 0;
  const grow = (bin: number[], total: number, from: number): void => {
    if (steps++ > tries || (best !== null && best.total <= least + ROUNDING)) return;
    if (total >= least - ROUNDING) {
      if (total <= most + ROUNDING && (best === null || total < best.total)) best = { bin: [...bin], total };
      return;
    }
    for (let k = from; k < left.length; k++) {
      const size = sizes[left[k]!]!;
      if (k > from && size === sizes[left[k - 1]!]) continue;
      bin.push(left[k]!);
      grow(bin, total + size, k + 1);
      bin.pop();
    }
  };
  grow([left[0]!], sizes[left[0]!]!, 1);
  return (best as { bin: number[] } | null)?.bin ?? null;
}

function sum(sizes: readonly number[], places: readonly number[]): number {
  return places.reduce((total, i) => total + sizes[i]!, 0);
}
