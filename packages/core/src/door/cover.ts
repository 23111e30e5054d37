import { SAME_LENGTH } from '@fielded/geometry';
import { EXACT, type Limits, sum } from './bins.ts';
import { coverExactly } from './complete-bins.ts';
import { dealEvenly } from './deal-evenly.ts';

/** Subsets that are looked at for one bin of a long list. */
const MOST_TRIES = 4_000;

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

function fillOneByOne(sizes: readonly number[], order: readonly number[], limits: Limits): number[][] | null {
  const bins: number[][] = [];
  let left = order;
  while (left.length > EXACT) {
    const bin = nearestBin(sizes, left, limits, MOST_TRIES);
    if (bin === null) return null;
    const taken = new Set(bin);
    const rest = left.filter((i) => !taken.has(i));
    // What is left over must still fill a bin.
    if (sum(sizes, rest) < limits.least - SAME_LENGTH) break;
    bins.push(bin);
    left = rest;
  }
  const last = coverExactly(sizes, left, limits);
  return last === null ? null : [...bins, ...last];
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
    if (steps++ > tries || (best !== null && best.total <= least + SAME_LENGTH)) return;
    if (total >= least - SAME_LENGTH) {
      if (total <= most + SAME_LENGTH && (best === null || total < best.total)) best = { bin: [...bin], total };
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
