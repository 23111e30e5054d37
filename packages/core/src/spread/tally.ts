import { SAME_LENGTH } from '@fielded/geometry';
import type { FitLimits } from '../joint/frame.ts';
import type { Histogram, SimulatedFigure, Simulation } from './simulation.ts';

/** Fine bins that quantiles are read from: each under a thousandth of a millimetre wide for spreads up to 20 mm. */
const FINE = 20_000;
/** Fine bins to one bar of the histogram handed out. */
const MERGED = 250;

const QUANTILES = ['0.00135', '0.025', '0.5', '0.975', '0.99865'] as const;

/** Counts one figure of joints as they are made, the first `count` of a list at a time. */
export interface Tally {
  readonly add: (figures: Float64Array, count: number) => void;
  /** null where nothing was counted. */
  readonly read: () => SimulatedFigure | null;
  readonly histogram: () => Histogram;
}

/**
 * An empty tally for figures between two bounds, mm.
 *
 * Mean and deviation are sums about the middle; quantiles are read off 20 000 equal bins between the bounds by straight
 * interpolation, so they are right to a bin's width. However many joints, it takes the same memory.
 */
export function createTally([least, most]: readonly [number, number]): Tally {
  const middle = (least + most) / 2;
  // Without any spread the bins still need a width.
  const step = Math.max(most - least, 1e-6) / FINE;
  const from = middle - (step * FINE) / 2;
  const perStep = 1 / step;
  const bins = new Float64Array(FINE);
  let count = 0;
  let sum = 0;
  let squares = 0;

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

  return {
    add(figures, more) {
      // Local sums stay in registers.
      let plus = 0;
      let squared = 0;
      for (let i = 0; i < more; i++) {
        const away = figures[i]! - middle;
        plus += away;
        squared += away * away;
        bins[Math.min(FINE - 1, Math.max(0, (figures[i]! - from) * perStep)) | 0]!++;
      }
      count += more;
      sum += plus;
      squares += squared;
    },
    read() {
      if (count === 0) return null;
      const offset = sum / count;
      const variance = count > 1 ? Math.max(0, squares - count * offset * offset) / (count - 1) : 0;
      const quantiles = Object.fromEntries(QUANTILES.map((part) => [part, quantile(Number(part))]));
      return {
        count,
        mean: middle + offset,
        deviation: Math.sqrt(variance),
        quantiles: quantiles as SimulatedFigure['quantiles'],
      };
    },
    histogram() {
      const counts = Array.from({ length: FINE / MERGED }, (_, bar) =>
        bins.subarray(bar * MERGED, (bar + 1) * MERGED).reduce((total, each) => total + each, 0),
      );
      return { from, step: step * MERGED, counts };
    },
  };
}

/** Counts joints by verdict. */
export interface VerdictTally {
  /** `enters`: whether the tip goes into the groove at all; asked for only where the clearance is negative. */
  readonly add: (clearance: number, enters: boolean) => void;
  readonly shares: () => Simulation['shares'];
}

/** An empty count of verdicts, parted as the fit itself is judged. */
export function createVerdictTally({ snug, loose }: FitLimits): VerdictTally {
  const verdicts = { 'will-not-enter': 0, 'stops-short': 0, tight: 0, sliding: 0, loose: 0 };
  return {
    add(clearance, enters) {
      if (clearance < -SAME_LENGTH) verdicts[enters ? 'stops-short' : 'will-not-enter']++;
      else if (clearance < snug - SAME_LENGTH || Math.abs(clearance) < SAME_LENGTH) verdicts.tight++;
      else if (clearance <= loose + SAME_LENGTH) verdicts.sliding++;
      else verdicts.loose++;
    },
    shares() {
      const count = Object.values(verdicts).reduce((total, each) => total + each, 0);
      const parts = Object.entries(verdicts).map(([verdict, each]) => [verdict, count > 0 ? each / count : 0]);
      return Object.fromEntries(parts) as Simulation['shares'];
    },
  };
}
