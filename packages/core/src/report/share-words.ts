import { formatNumber } from '../measure/format.ts';
import type { Simulation } from '../spread/simulation.ts';

/** A space at which no line breaks, so that a figure keeps its %. */
const TIED = '\u00a0';

/**
 * How many of the joints made at random bind, are tight, slide and rattle, and how they were spread, as a sentence.
 *
 * Shares are rounded to a tenth of a %, to a hundredth below 1 and above 99, and never to none or to all.
 */
export function shareSentence({ count, distribution, seed, shares }: Simulation): string {
  const how = distribution === 'normal' ? 'each ± three deviations of a normal spread' : 'each ± spread evenly';
  const parts = [
    `${sayShare(shares['will-not-enter'] + shares['stops-short'])} bind`,
    `${sayShare(shares.tight)} are tight`,
    `${sayShare(shares.sliding)} slide`,
    `${sayShare(shares.loose)} rattle`,
  ];
  return `Of ${count.toLocaleString('en')} joints made at random, ${parts.join(', ')} (${how}; seed ${seed}).`;
}

/** A share, 0 to 1, in % for a sentence. */
export function sayShare(share: number): string {
  if (share === 0 || share === 1) return `${share * 100}${TIED}%`;
  if (share < 0.0001) return `under 0.01${TIED}%`;
  if (share > 0.9999) return `over 99.99${TIED}%`;
  return `${formatNumber(share * 100, share < 0.01 || share > 0.99 ? 2 : 1)}${TIED}%`;
}
