import type { PowerBand } from './set-up-report.ts';

/** End grain takes about twice the work of long grain (common practice; published figures order it so). */
export const END_GRAIN = 2;

/**
 * Power at the cutter, W: k·A·v/60 for A mm² at v m/min and k N/mm² (formula U8), as a band from half to double, since wood,
 * chip and edge change it that much.
 *
 * @example bandOf(powerAt(40, 240.75, 6)).likely // 963
 */
export function powerAt(energy: number, area: number, feed: number): number {
  return (energy * area * feed) / 60;
}

export function bandOf(likely: number): PowerBand {
  return { least: likely / 2, likely, most: 2 * likely };
}
