import type { Source } from '../../packages/core/src/spread/sources.ts';
import { Random } from '../support/random.ts';

/**
 * The greatest value of a function of moves that a blind search finds: `tries` places at random, a third of them at ends of their ±, then
 * compass search from the best few, in steps that halve (Hooke and Jeeves 1961). Knows nothing of what the function is.
 */
export function seekFurther(
  read: (moves: Float64Array) => number,
  sources: readonly Source[],
  size: number,
  tries: number,
): number {
  const random = new Random(sources.length + tries);
  const free = sources.filter(({ plusMinus }) => plusMinus > 0);
  const starts: { value: number; moves: Float64Array }[] = [];
  for (let n = 0; n < tries; n++) {
    const moves = new Float64Array(size);
    for (const { place, plusMinus } of free) {
      const part = random.between(-1, 1);
      moves[place] = plusMinus * (random.unit() < 0.5 ? Math.sign(part) : part);
    }
    starts.push({ value: read(moves), moves });
    if (starts.length > 200) starts.sort((a, b) => b.value - a.value).splice(4);
  }
  starts.sort((a, b) => b.value - a.value).splice(4);
  return Math.max(...starts.map(({ moves, value }) => climbFrom(read, free, moves, value)));
}

function climbFrom(
  read: (moves: Float64Array) => number,
  free: readonly Source[],
  moves: Float64Array,
  from: number,
): number {
  let value = from;
  for (let part = 1; part > 1e-9; part /= 2) {
    for (let gained = true; gained; ) {
      gained = false;
      for (const { place, plusMinus } of free) {
        for (const way of [-1, 1]) {
          const before = moves[place]!;
          moves[place] = Math.max(-plusMinus, Math.min(plusMinus, before + way * part * plusMinus));
          const tried = read(moves);
          if (tried > value + 1e-12) {
            value = tried;
            gained = true;
          } else moves[place] = before;
        }
      }
    }
  }
  return value;
}
