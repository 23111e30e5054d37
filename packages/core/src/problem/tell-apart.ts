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
  const written = figures.map(writeAsUsual);
  figures.forEach((one, i) => {
    for (let j = 0; j < i; j++) {
      const other = figures[j]!;
      if (one.kind !== other.kind || !differ(one.value, other.value)) continue;
      while (written[i]!.text === written[j]!.text) {
        // Both alike, so that it is seen which is the greater.
        const digits = Math.max(written[i]!.digits, written[j]!.digits) + 1;
        if (digits > MOST_DIGITS) break;
        written[i] = { digits, text: one.write(digits) };
        written[j] = { digits, text: other.write(digits) };
      }
    }
  });
  return written.map(({ text }) => text);
}

interface Written {
  readonly digits: number;
  readonly text: string;
}

const MOST_DIGITS = 9;

/** Figures nearer than this are the same: rounding. */
const SAME_FIGURE = 1e-9;

function differ(one: number, other: number): boolean {
  return Math.abs(one - other) > SAME_FIGURE;
}

/** With as many decimals as usual, or as it takes to show that a figure is not 0. */
function writeAsUsual({ value, digits, write }: SentenceFigure): Written {
  let written: Written = { digits, text: write(digits) };
  // 1 mm is not 0 in any unit.
  if (Math.abs(value) >= 1 || !differ(value, 0)) return written;
  while (written.digits < MOST_DIGITS && Number.parseFloat(written.text.replace('−', '')) === 0)
    written = { digits: written.digits + 1, text: write(written.digits + 1) };
  return written;
}
