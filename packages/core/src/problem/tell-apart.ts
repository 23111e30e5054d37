/** A figure of a sentence, and how it is written with so many decimals. */
export interface SentenceFigure {
  /** mm, degrees, m/s and so on. */
  readonly value: number;
  /** Figures are held against those of the same kind alone: a length is never taken for an angle. */
  readonly kind: string;
  /** How many decimals it usually has. */
  readonly digits: number;
  readonly write: (digits: number) => string;
}

/**
 * The figures of one sentence as texts, in their order: two that differ are never written alike, and what is not nothing is
 * never written as 0. Both get as many decimals as that takes, 9 at most: 'should go in 10 mm and stops at 9.996 mm'.
 * Figures that differ by less than 1e-9 are the same.
 */
export function tellApart(figures: readonly SentenceFigure[]): readonly string[] {
  const digits = figures.map(leastDigits);
  figures.forEach((one, i) => {
    figures.slice(0, i).forEach((other, j) => {
      if (one.kind !== other.kind || !differ(one.value, other.value)) return;
      while (digits[i]! < MOST_DIGITS && one.write(digits[i]!) === other.write(digits[j]!)) {
        // Both alike, so that it is seen which is the greater.
        digits[i] = digits[j] = Math.max(digits[i]!, digits[j]!) + 1;
      }
    });
  });
  return figures.map(({ write }, i) => write(digits[i]!));
}

const MOST_DIGITS = 9;

/** Figures nearer than this are the same: rounding. */
const SAME_FIGURE = 1e-9;

function differ(one: number, other: number): boolean {
  return Math.abs(one - other) > SAME_FIGURE;
}

/** As many decimals as usual, or as it takes to show that a figure is not 0. */
function leastDigits({ value, digits, write }: SentenceFigure): number {
  if (!differ(value, 0)) return digits;
  let enough = digits;
  while (enough < MOST_DIGITS && Number.parseFloat(write(enough).replace('−', '')) === 0) enough++;
  return enough;
}
