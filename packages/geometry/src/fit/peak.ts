/**
 * The x between `from` and `to` at which a function with a single peak there is greatest, by golden section (Kiefer 1953): each step
 * leaves 0.618 of the interval. A peak at an end of the interval is approached but not reached.
 *
 * @example findPeak((x) => -((x - 1) ** 2), 0, 3, 40) // 1, to 8 figures
 */
export function findPeak(f: (x: number) => number, from: number, to: number, steps: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let a = from;
  let b = to;
  let left = b - golden * (b - a);
  let right = a + golden * (b - a);
  let atLeft = f(left);
  let atRight = f(right);
  for (let i = 0; i < steps; i++) {
    if (atLeft > atRight) {
      b = right;
      right = left;
      atRight = atLeft;
      left = b - golden * (b - a);
      atLeft = f(left);
    } else {
      a = left;
      left = right;
      atLeft = atRight;
      right = a + golden * (b - a);
      atRight = f(right);
    }
  }
  return atLeft > atRight ? left : right;
}
