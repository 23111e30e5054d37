import { fillNormalPairs } from './normal-pairs.ts';
import { xoshiro128 } from './xoshiro.ts';

/** Numbers that look random and are the same for the same seed everywhere. */
export interface Random {
  /** Fills `out` with independent numbers spread evenly over -1 … 1. */
  readonly fillEven: (out: Float64Array) => void;
  /** Fills `out` with independent standard normal numbers (mean 0, deviation 1), none beyond ±6.7. */
  readonly fillNormal: (out: Float64Array) => void;
}

/** No number from {@link Random.fillNormal} is further from 0: √(−2·ln 2⁻³²) = 6.66. */
export const FURTHEST_NORMAL = 6.7;

const STEP = 2 ** -32;

/** Whole numbers made at a time. */
const BATCH = 1024;

/**
 * A random generator, the same for the same `seed` on every machine.
 *
 * xoshiro128** (Blackman and Vigna, 2018; period 2¹²⁸ − 1) on 32-bit integers, started by SplitMix32 from the seed's low
 * 32 bits; normal numbers in pairs by Box and Muller (1958) (formula S3). Not for secrets.
 *
 * @throws RangeError for a seed that is not a whole number.
 */
export function createRandom(seed: number): Random {
  if (!Number.isSafeInteger(seed)) throw new RangeError(`a seed must be a whole number, got ${seed}`);
  let start = seed | 0;
  const scramble = () => {
    start = (start + 0x9e3779b9) | 0;
    let z = start;
    z = Math.imul(z ^ (z >>> 16), 0x85ebca6b);
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
    return z ^ (z >>> 16);
  };
  const fillWhole = xoshiro128(scramble(), scramble(), scramble(), scramble());
  const room = new Uint32Array(BATCH);
  /** Visits `count` numbers in batches: the whole numbers of each, and how many of them are meant from where on. */
  const inBatches = (count: number, visit: (whole: Uint32Array, from: number, end: number) => void) => {
    for (let from = 0; from < count; from += BATCH) {
      const end = Math.min(count, from + BATCH);
      // Normal numbers are made of pairs.
      const whole = end - from === BATCH ? room : room.subarray(0, end - from + ((end - from) % 2));
      fillWhole(whole);
      visit(whole, from, end);
    }
  };

  return {
    fillEven(out) {
      inBatches(out.length, (whole, from, end) => {
        for (let i = from; i < end; i++) out[i] = (whole[i - from]! + 0.5) * 2 * STEP - 1;
      });
    },
    fillNormal(out) {
      inBatches(out.length, (whole, from, end) => fillNormalPairs(whole, out, from, end));
    },
  };
}
