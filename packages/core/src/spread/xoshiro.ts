/**
 * Fills lists with whole numbers 0 to 2³² − 1 that look random, going on where it stopped, from four 32-bit words of state that
 * are not all 0.
 *
 * xoshiro128** by Blackman and Vigna (2018), period 2¹²⁸ − 1. A list at a time, so that the state stays in registers.
 */
export function xoshiro128(...start: readonly [number, number, number, number]): (out: Uint32Array) => void {
  const state = Int32Array.from(start);
  return (out) => {
    let a = state[0]!;
    let b = state[1]!;
    let c = state[2]!;
    let d = state[3]!;
    for (let i = 0; i < out.length; i++) {
      const mixed = Math.imul(b, 5);
      out[i] = Math.imul((mixed << 7) | (mixed >>> 25), 9);
      const shifted = b << 9;
      c ^= a;
      d ^= b;
      b ^= c;
      a ^= d;
      c ^= shifted;
      d = (d << 11) | (d >>> 21);
    }
    state[0] = a;
    state[1] = b;
    state[2] = c;
    state[3] = d;
  };
}
