import { type Chain, splitAtExtremes } from '@fielded/geometry';

/** Greatest extent of a chain along x and along y, mm. */
export function outlineExtent(chain: Chain): { readonly width: number; readonly height: number } {
  const monotone = splitAtExtremes(chain);
  const xs = monotone.flatMap((c) => [c.x0, c.x1]);
  const ys = monotone.flatMap((c) => [c.y0, c.y1]);
  return { width: rangeOf(xs), height: rangeOf(ys) };
}

function rangeOf(values: readonly number[]): number {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) [least, most] = [Math.min(least, value), Math.max(most, value)];
  return most - least;
}
