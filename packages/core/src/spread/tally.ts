import type { FitLimits } from '../frame/frame.ts';
import { SAME_LENGTH } from '../tolerance.ts';
import type { Simulation } from './simulation.ts';

/** Counts joints as they are made. */
export interface Tally {
  /** `enters`: whether the tip goes into the groove at all; asked for only where the clearance is negative. */
  readonly add: (clearance: number, enters: boolean) => void;
  readonly read: () => Pick<Simulation, 'mean' | 'deviation' | 'quantiles' | 'shares' | 'histogram'>;
}

/** Fine bins that quantiles are read from: each under a thousandth of a millimetre wide for spreads up to 20 mm. */
const FINE = 20_000;
/** Fine bins to one bar of the histogram handed out. */
const MERGED = 250;

const QUANTILES = ['0.00135', '0.025', '0.5', '0.975', '0.99865'] as const;

/**
 * An empty tally for clearances between two bounds, mm.
 *
 * Mean and deviation are exact sums about the middle; quantiles are read off 20 000 equal bins between the bounds by straight
 * interpolation, so they are right to a bin's width; however many joints, it takes the same memory.
 */
export function createTally([least, most]: readonly [number, number], { snug, loose }: FitLimits): Tally {
  const middle = (least + most) / 2;
  // A spread of nothing still needs bins of some width.
  const step = Math.max(most - least, 1e-6) / FINE;
  const from = middle - (step * FINE) / 2;
  const bins = new Float64Array(FINE);
  const verdicts = { 'will-not-enter': 0, 'stops-short': 0, tight: 0, sliding: 0, loose: 0 };
  let count = 0;
  let sum = 0;
  let squares = 0;

  const add = (clearance: number, enters: boolean) => {
    const away = clearance - middle;
    count++;
    sum += away;
    squares += away * away;
    bins[Math.min(FINE - 1, Math.max(0, Math.floor((clearance - from) / step)))]!++;
    // As the fit itself is judged.
    if (clearance < -SAME_LENGTH) verdicts[enters ? 'stops-short' : 'will-not-enter']++;
    else if (clearance < snug - SAME_LENGTH || Math.abs(clearance) < SAME_LENGTH) verdicts.tight++;
    else if (clearance <= loose + SAME_LENGTH) verdicts.sliding++;
    else verdicts.loose++;
  };

  const quantile = (part: number) => {
    const wanted = part * count;
    let below = 0;
    for (let i = 0; i < FINE; i++) {
      const here = bins[i]!;
      if (here > 0 && below + here >= wanted) return from + step * (i + (wanted - below) / here);
      below += here;
    }
    return most;
  };

  const read = () => {
    const share = (number: number) => (count > 0 ? number / count : 0);
    const offset = share(sum);
    const counts = Array.from({ length: FINE / MERGED }, (_, bar) =>
      bins.subarray(bar * MERGED, (bar + 1) * MERGED).reduce((total, each) => total + each, 0),
    );
    return {
      mean: middle + offset,
      deviation: count > 1 ? Math.sqrt(Math.max(0, squares - count * offset * offset) / (count - 1)) : 0,
      quantiles: Object.fromEntries(QUANTILES.map((part) => [part, quantile(Number(part))])) as Simulation['quantiles'],
      shares: {
        'will-not-enter': share(verdicts['will-not-enter']),
        'stops-short': share(verdicts['stops-short']),
        tight: share(verdicts.tight),
        sliding: share(verdicts.sliding),
        loose: share(verdicts.loose),
      },
      histogram: { from, step: step * MERGED, counts },
    };
  };
  return { add, read };
}
