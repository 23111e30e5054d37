import type { Box } from '@fielded/geometry';
import type { Role, TextItem } from '../scene.ts';
import { text } from '../scene.ts';
import { textReach, textWidth } from '../text/measure-text.ts';

/** Heights of capitals, mm, after ISO 3098. */
export const FIGURE_HEIGHT = 3.5;
const WORD_HEIGHT = 2.5;
const WORD_GAP = 1.2;
/** From the line to the baseline of a text that stands on it, and of one with tails. */
const CLEAR_OF_LINE = 1.2;
const CLEAR_WITH_TAILS = 1.5;

/** How much attention a dimension asks for: `judged` decides the verdict, `trouble` spoils it. */
export type Tone = 'plain' | 'judged' | 'trouble';

/** What a dimension says: the figure, and a word beside it where there is room. */
export interface Figure {
  readonly key: string;
  readonly of: string;
  /** mm, or degrees for an angle. */
  readonly value: number;
  readonly text: string;
  /** Under the line, smaller: the decimal beside a rounded fraction, or the other unit; '' for nothing. */
  readonly under: string;
  readonly word: string;
  /** The whole of it in words, for those who cannot see the drawing. */
  readonly label: string;
  readonly tone: Tone;
}

/** The roles that a tone is drawn in. */
export function toneRoles(tone: Tone): { line: Role; fill: Role; text: Role } {
  if (tone === 'judged') return { line: 'judged-thin', fill: 'judged-fill', text: 'judged-text' };
  if (tone === 'trouble') return { line: 'trouble-thin', fill: 'trouble-fill', text: 'trouble-text' };
  return { line: 'dimension', fill: 'arrow', text: 'text' };
}

/** One text of a figure on its line: where it starts along the line, how far its baseline is off it, and the room it takes. */
interface Part {
  readonly key: 'figure' | 'word' | 'under';
  readonly words: string;
  readonly height: number;
  readonly start: number;
  readonly off: number;
  readonly width: number;
  readonly above: number;
  readonly below: number;
}

/** A figure with its texts measured and set out on a line `width` mm long. */
export interface Lettering {
  readonly figure: Figure;
  readonly width: number;
  readonly parts: readonly Part[];
}

/** Sets out a figure above and under its line, with its word or without: measured once, then placed wherever it is tried. */
export function letter(figure: Figure, withWord: boolean): Lettering {
  const word = withWord ? figure.word : '';
  const main = textWidth(figure.text, FIGURE_HEIGHT);
  const whole = word ? main + WORD_GAP + textWidth(word, WORD_HEIGHT) : main;
  const under = figure.under ? textWidth(figure.under, WORD_HEIGHT) : 0;
  const width = Math.max(whole, under);
  const tails = [figure.text, word].some((words) => textReach(words, 1).below > 0.1);
  const off = -(tails ? CLEAR_WITH_TAILS : CLEAR_OF_LINE);
  const start = (width - whole) / 2;
  const part = (
    key: Part['key'],
    words: string,
    height: number,
    from: number,
    baseline: number,
    long: number,
  ): Part => ({
    key,
    words,
    height,
    start: from,
    off: baseline,
    width: long,
    ...textReach(words, height),
  });
  const parts = [part('figure', figure.text, FIGURE_HEIGHT, start, off, main)];
  if (word) parts.push(part('word', word, WORD_HEIGHT, start + main + WORD_GAP, off, whole - main - WORD_GAP));
  if (under)
    parts.push(part('under', figure.under, WORD_HEIGHT, (width - under) / 2, CLEAR_OF_LINE + WORD_HEIGHT, under));
  return { figure, width, parts };
}

/** The boxes of the texts on a line that starts at (x, y) and runs to the right, or up when `upright`. */
export function letteringBoxes({ parts }: Lettering, x: number, y: number, upright: boolean): Box[] {
  return parts.map(({ start, off, width, above, below }) =>
    upright
      ? { x0: x + off - above, x1: x + off + below, y0: y - start - width, y1: y - start }
      : { x0: x + start, x1: x + start + width, y0: y + off - above, y1: y + off + below },
  );
}

/** The texts themselves, placed in the same way. */
export function letteringItems({ figure, parts }: Lettering, x: number, y: number, upright: boolean): TextItem[] {
  const role = toneRoles(figure.tone).text;
  const quiet = figure.tone === 'plain' ? 'quiet' : role;
  return parts.map(({ key, words, height, start, off }) => {
    const [textX, textY] = upright ? [x + off, y - start] : [x + start, y + off];
    return text(key, key === 'figure' ? role : quiet, textX, textY, words, height, 'start', upright);
  });
}
