import { SAME_LENGTH } from '@fielded/geometry';
import type { Joint } from './joint.ts';
import type { Figure, Source } from './sources.ts';

/** Where in its ± a source is tried: both ends, then the middle. */
const LEVELS = [-1, 1, 0] as const;

/** With more sources of unknown sense than this (729 combinations) the worst case is climbed to instead. */
const MOST_TRIED = 6;

/** The least (`way` -1) or most (+1) a figure can be, mm, with every source within its ±. */
export function seekWorst(
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
