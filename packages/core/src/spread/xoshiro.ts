/**
 * Whole numbers 0 to 2³² − 1 that look random, from four 32-bit words of state that are not all 0.
 *
 * xoshiro128** by Blackman and Vigna (2018), period 2¹²⁸ − 1.
 */
export function xoshiro128(a: number, b: number, c: number, d: number): () => number {
  return () => {
    const mixed = Math.imul(b, 5);
    const result = Math.imul((mixed << 7) | (mixed >>> 25), 9);
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = (d << 11) | (d >>> 21);
    return result >>> 0;
  };
}
