import { SAME_LENGTH } from '../tolerance.ts';
import type { Joint, JointFigures } from './joint.ts';
import type { Figure, Source } from './sources.ts';

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

/** Where in its ± a source is tried: both ends, then the middle. */
const LEVELS = [-1, 1, 0] as const;

/** With more sources of unknown sense than this (729 combinations) the worst case is climbed to instead. */
const MOST_TRIED = 6;

/** Step, mm, over which the slope of a source without a ± is taken. */
const TRIAL = 0.01;

/**
 * Stacks every source's ± into one figure of a joint, mm.
 *
 * `worst` is the least and most the figure can be with every source anywhere within its ±; `rss` is nominal ± the root of
 * the sum of (slope·±)², which holds about 99.7 % of joints when each ± is three deviations and the figure is near linear
 * (Taylor's rule for propagating errors). Worst cases sit at the ends of sources whose sense is known; the others are tried
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
    worst: [worstCase(read, joint, sources, figure, -1), worstCase(read, joint, sources, figure, 1)],
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

/** The least (`way` -1) or most (+1) a figure can be, mm, with every source within its ±. */
export function worstCase(
  read: (moves: Float64Array) => number,
  joint: Joint,
  sources: readonly Source[],
  figure: Figure,
  way: -1 | 1,
): number {
  const moves = new Float64Array(joint.moveCount);
  const open: Source[] = [];
  for (const source of sources) {
    if (!(source.plusMinus > 0)) continue;
    const sense = source.sense[figure];
    if (sense === 0) open.push(source);
    else moves[source.place] = way * sense * source.plusMinus;
  }
  const { best: corner, moves: bestMoves } =
    open.length <= MOST_TRIED ? tryEvery(read, moves, open, way) : climb(read, moves, open, way);
  let best = corner;
  for (const { place, plusMinus } of open) {
    if (bestMoves[place] === 0) best = Math.max(best, refine(read, bestMoves, place, plusMinus, way));
  }
  return way * best;
}

interface Found {
  best: number;
  moves: Float64Array;
}

/** The best of every combination of ends and middles: 3ⁿ of them. */
function tryEvery(
  read: (moves: Float64Array) => number,
  moves: Float64Array,
  open: readonly Source[],
  way: -1 | 1,
): Found {
  const found: Found = { best: Number.NEGATIVE_INFINITY, moves: moves.slice() };
  const tryFrom = (index: number) => {
    if (index === open.length) {
      const value = way * read(moves);
      if (value > found.best) {
        found.best = value;
        found.moves = moves.slice();
      }
      return;
    }
    const { place, plusMinus } = open[index]!;
    for (const level of LEVELS) {
      moves[place] = level * plusMinus;
      tryFrom(index + 1);
    }
  };
  tryFrom(0);
  return found;
}

/** One source after another to its best level, the others kept, from three starts and until none gains any more. */
function climb(
  read: (moves: Float64Array) => number,
  moves: Float64Array,
  open: readonly Source[],
  way: -1 | 1,
): Found {
  const found: Found = { best: Number.NEGATIVE_INFINITY, moves: moves.slice() };
  for (const start of LEVELS) {
    for (const { place, plusMinus } of open) moves[place] = start * plusMinus;
    let value = way * read(moves);
    for (let gained = true; gained; ) {
      gained = false;
      for (const { place, plusMinus } of open) {
        const before = moves[place]!;
        let kept = before;
        for (const level of LEVELS) {
          moves[place] = level * plusMinus;
          const tried = way * read(moves);
          if (tried > value + SAME_LENGTH) {
            value = tried;
            kept = moves[place]!;
            gained = true;
          }
        }
        moves[place] = kept;
      }
    }
    if (value > found.best) {
      found.best = value;
      found.moves = moves.slice();
    }
  }
  return found;
}

/** Golden-section search of one source between its ends, the others kept; leaves `moves` at the best found. */
function refine(
  read: (moves: Float64Array) => number,
  moves: Float64Array,
  place: number,
  plusMinus: number,
  way: -1 | 1,
): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  const at = (move: number) => {
    moves[place] = move;
    return way * read(moves);
  };
  let low = -plusMinus;
  let high = plusMinus;
  for (let turn = 0; turn < 60; turn++) {
    const left = high - golden * (high - low);
    const right = low + golden * (high - low);
    if (at(left) > at(right)) high = right;
    else low = left;
  }
  const between = (low + high) / 2;
  const found = at(between);
  const stay = at(0);
  if (found > stay) moves[place] = between;
  return Math.max(found, stay);
}

/** Reads one figure of a joint for a list of moves. */
export function createReader(joint: Joint, figure: Figure): (moves: ArrayLike<number>) => number {
  const figures: JointFigures = { clearance: 0, frontMost: 0, frontLeast: 0 };
  return (moves) => {
    joint.measure(moves, figures);
    return figures[figure];
  };
}

/** A slope with rounding taken off: a figure computed twice to 1e-13 over a step of 1e-2 is good to 1e-10. */
function settle(slope: number): number {
  const whole = Math.round(slope);
  return Math.abs(slope - whole) < 1e-10 ? whole + 0 : slope;
}
