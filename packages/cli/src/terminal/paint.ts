/** The kind of a piece of text, for its colour; words and marks say the same without colour. */
export type PaintTone = 'heading' | 'good' | 'warning' | 'error' | 'faint';

const CODES: Readonly<Record<PaintTone, readonly [number, number]>> = {
  heading: [1, 22],
  good: [32, 39],
  warning: [33, 39],
  error: [31, 39],
  faint: [2, 22],
};

/** Colours text, or leaves it as it is. */
export type Paint = (text: string, tone: PaintTone) => string;

/** A painter for a terminal that wants colour, or one that does nothing. */
export function painter(colour: boolean): Paint {
  return (text, tone) => (colour ? `\u001B[${CODES[tone][0]}m${text}\u001B[${CODES[tone][1]}m` : text);
}
