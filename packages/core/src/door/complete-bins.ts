import { SAME_LENGTH } from '@fielded/geometry';
import { type Limits, mostBins, sum } from './bins.ts';

/** Steps after which a search gives up: under EXACT sizes far more than one needs, less for what a long list leaves. */
const MOST_STEPS = { exact: 400_000, rest: 700 };
const FILL_COST = 20;

/** Exact: from the most bins that the sum allows down to one. */
export function coverExactly(sizes: readonly number[], order: readonly number[], limits: Limits): number[][] | null {
  const total = sum(sizes, order);
  for (let bins = mostBins(sizes, order, limits.least); bins > 0; bins--) {
    if (total > bins * limits.most + SAME_LENGTH) return null;
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
    if (total < bins * least - SAME_LENGTH || total > bins * most + SAME_LENGTH || left.length < bins) return null;
    if (bins === 1) return [[...left]];
    // Filling a bin costs about as much as trying this many sizes.
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
    // List all bins that hold the first size and lie between the limits; equal sizes are tried once.
    const grow = (bin: number[], total: number, from: number): void => {
      if (this.#steps++ > this.#most) return;
      if (total >= this.#limits.least - SAME_LENGTH) candidates.push({ bin: [...bin], total });
      for (let k = from; k < left.length; k++) {
        const size = sizes[left[k]!]!;
        if (k > from && size === sizes[left[k - 1]!]) continue;
        if (total + size > most + SAME_LENGTH) continue;
        bin.push(left[k]!);
        grow(bin, total + size, k + 1);
        bin.pop();
      }
    };
    const first = left[0]!;
    if (sizes[first]! <= most + SAME_LENGTH) grow([first], sizes[first]!, 1);
    // Try the tightest first, and fill the other bins with the rest.
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
