import { createReader, type Joint } from './joint.ts';
import type { Source, SpreadFigure } from './sources.ts';
import { type FoundBy, findWorst } from './worst-case.ts';

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
  /** How the least and the most are known. */
  readonly worstBy: readonly [FoundBy, FoundBy];
  readonly rss: readonly [number, number];
  /** Largest contribution first. */
  readonly sources: readonly SourceShare[];
}

/** Step, mm, over which the slope of a source without a ± is taken. */
const TRIAL = 0.01;

/**
 * Stacks every source's ± into one figure of a joint, mm.
 *
 * `worst` is the least and most the figure can be with every source anywhere within its ± (see `findWorst`); `rss` is nominal ± the root of
 * the sum of (slope·±)², which holds about 99.7 % of joints when each ± is three deviations and the figure is near linear
 * (Taylor's rule for propagating errors; formula S2).
 */
export function stackFigure(joint: Joint, sources: readonly Source[], figure: SpreadFigure): Stack {
  const read = createReader(joint, figure);
  const moves = new Float64Array(joint.moveCount);
  const nominal = read(moves);
  // The slope of each source: the difference over its whole ±, the others at nominal.
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
  const [least, most] = [findWorst(joint, sources, figure, -1), findWorst(joint, sources, figure, 1)];
  return {
    nominal,
    worst: [least.worst, most.worst],
    worstBy: [least.by, most.by],
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
