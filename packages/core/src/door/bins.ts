import { SAME_LENGTH } from '@fielded/geometry';

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

/** An upper bound on the number of bins, from the sum of the sizes and from how many of the largest one bin takes. */
export function mostBins(sizes: readonly number[], order: readonly number[], least: number): number {
  let each = 0;
  let reached = 0;
  while (each < order.length && reached < least - SAME_LENGTH) reached += sizes[order[each++]!]!;
  if (reached < least - SAME_LENGTH) return 0;
  return Math.min(Math.floor(sum(sizes, order) / least + SAME_LENGTH), Math.floor(order.length / each));
}

/** The sizes at some places of the list, together. */
export function sum(sizes: readonly number[], places: readonly number[]): number {
  return places.reduce((total, i) => total + sizes[i]!, 0);
}
