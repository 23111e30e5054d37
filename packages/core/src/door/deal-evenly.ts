import { SAME_LENGTH } from '@fielded/geometry';
import { type Limits, mostBins, sum } from './bins.ts';

/**
 * More than `atLeast` bins, as many as come out full when the sizes, the largest first, each go to the bin that holds least
 * (Graham's longest processing time, 1969); null where none do.
 */
export function dealEvenly(
  sizes: readonly number[],
  order: readonly number[],
  { least, most }: Limits,
  atLeast: number,
): number[][] | null {
  let best: number[][] | null = null;
  // Fewer bins are easier to fill, down to those that would overflow: the most that come out full are found by halving.
  const overflowing = Math.ceil(sum(sizes, order) / most - SAME_LENGTH) - 1;
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
  const full = bins.every(({ total }) => total >= least - SAME_LENGTH && total <= most + SAME_LENGTH);
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
    if (wanted <= SAME_LENGTH) return;
    let best: { bin: DealtBin; mine: number; theirs: number; gain: number } | null = null;
    for (const bin of bins) {
      const spare = bin.total - least;
      if (bin === short || spare <= SAME_LENGTH) continue;
      for (let m = 0; m < short.places.length; m++) {
        for (let t = 0; t < bin.places.length; t++) {
          const gain = sizes[bin.places[t]!]! - sizes[short.places[m]!]!;
          if (gain <= SAME_LENGTH || gain > spare) continue;
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
