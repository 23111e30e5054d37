import { SAME_LENGTH } from '@fielded/geometry';
import type { Joint } from './joint.ts';
import type { Source, SpreadFigure } from './sources.ts';

/** Where in its ± a source is tried: both ends, then the middle. */
const LEVELS = [-1, 1, 0] as const;

/** With more sources of unknown sense than this (729 combinations) the worst case is climbed to instead. */
const MOST_TRIED = 6;

/** The least (`way` -1) or most (+1) a figure can be, mm, with every source within its ±. */
export function seekWorst(
  read: (moves: Float64Array) => number,
  joint: Joint,
  sources: readonly Source[],
  figure: SpreadFigure,
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
  return way * refine(read, bestMoves, corner, open, way);
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
    // Start with every source at this level.
    for (const { place, plusMinus } of open) moves[place] = start * plusMinus;
    let value = way * read(moves);
    for (let gained = true; gained; ) {
      gained = false;
      for (const { place, plusMinus } of open) {
        // Which level of this one source is best, the others as they are?
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

/** Steps that are tried, each half the one before, from half a ± on: to some ten-millionth of it. */
const STEPS = 24;

/** Refines the best of the ends and middles: each source alone, in steps that halve (Hooke and Jeeves 1961). */
function refine(
  read: (moves: Float64Array) => number,
  moves: Float64Array,
  from: number,
  open: readonly Source[],
  way: -1 | 1,
): number {
  let best = from;
  let part = 0.5;
  for (let step = 0; step < STEPS; step++, part /= 2) {
    for (let gained = true; gained; ) {
      gained = false;
      // Move each source by this step, until none of them gains any more.
      for (const { place, plusMinus } of open) {
        for (const move of [-part * plusMinus, part * plusMinus]) {
          const before = moves[place]!;
          moves[place] = Math.max(-plusMinus, Math.min(plusMinus, before + move));
          const tried = way * read(moves);
          if (tried > best + SAME_LENGTH) {
            best = tried;
            gained = true;
          } else moves[place] = before;
        }
      }
    }
  }
  return best;
}
