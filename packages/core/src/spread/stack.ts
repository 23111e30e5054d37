import { createReader, type Joint } from './joint.ts';
import type { Figure, Source } from './sources.ts';
import { worstCase } from './worst-case.ts';

/** What one source does to a figure. */
export interface SourceShare {
  readonly name: string;
  readonly plusMinus: number;
  /** mm of the figure per unit of the source, taken over its whole ±. */
  readonly slope: number;
  /** mm the figure moves for the whole ±: |slope|·plusMinus. */
  readonly contribution: number;
  /** Its part of the root-sum-square spread, 0 to 1; 0 where nothing varies. */
  readonly share: number;
}

/** A figure's tolerance stack, mm: as drawn, the very worst, and the root of the sum of squares. */
export interface Stack {
  readonly nominal: number;
  readonly worst: readonly [number, number];
  readonly rss: readonly [number, number];
  /** Largest contribution first. */
  readonly sources: readonly SourceShare[];
}

/** Step, mm, over which the slope of a source without a ± is taken. */
const TRIAL = 0.01;

/**
 * Stacks every source's ± into one figure of a joint, mm.
 *
 * `worst` is the least and most the figure can be with every source anywhere within its ±; `rss` is nominal ± the root of
 * the sum of (slope·±)², which holds about 99.7 % of joints when each ± is three deviations and the figure is near linear
 * (Taylor's rule for propagating errors; formula S2). Worst cases sit at the ends of sources whose sense is known; the others are tried
 * in every combination of their ends and middles, and refined where a middle wins; above six of them, one after another.
 */
export function stackFigure(joint: Joint, sources: readonly Source[], figure: Figure): Stack {
  const read = createReader(joint, figure);
  const moves = new Float64Array(joint.moveCount);
  const nominal = read(moves);
  const shares = sources.map((source) => {
    const step = source.plusMinus > 0 ? source.plusMinus : TRIAL;
    moves[source.place] = step;
    const more = read(moves);
    moves[source.place] = -step;
    const less = read(moves);
    moves[source.place] = 0;
    return { source, slope: settle((more - less) / (2 * step)) };
  });
  const variance = shares.reduce((sum, { source, slope }) => sum + (slope * source.plusMinus) ** 2, 0);
  const root = Math.sqrt(variance);
  return {
    nominal,
    worst: [worstCase(joint, sources, figure, -1), worstCase(joint, sources, figure, 1)],
    rss: [nominal - root, nominal + root],
    sources: shares
      .map(({ source, slope }) => {
        const contribution = Math.abs(slope) * source.plusMinus;
        const share = variance > 0 ? contribution ** 2 / variance : 0;
        return { name: source.name, plusMinus: source.plusMinus, slope, contribution, share };
      })
      .sort((a, b) => b.contribution - a.contribution),
  };
}

/** A slope with rounding taken off: a figure computed twice to 1e-13 over a step of 1e-2 is good to 1e-10. */
function settle(slope: number): number {
  const whole = Math.round(slope);
  return Math.abs(slope - whole) < 1e-10 ? whole + 0 : slope;
}
