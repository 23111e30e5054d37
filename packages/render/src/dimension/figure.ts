import type { Role, TextItem } from '../scene.ts';
import { text } from '../scene.ts';
import { textReach, textWidth } from '../text/measure-text.ts';

/** Heights of capitals, mm, after ISO 3098. */
export const FIGURE_HEIGHT = 3.5;
export const WORD_HEIGHT = 2.5;
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

/** How long the figure is, mm, with its word or without. */
export function figureWidth(figure: Figure, withWord: boolean): number {
  let width = textWidth(figure.text, FIGURE_HEIGHT);
  if (withWord && figure.word) width += WORD_GAP + textWidth(figure.word, WORD_HEIGHT);
  return figure.under ? Math.max(width, textWidth(figure.under, WORD_HEIGHT)) : width;
}

/**
 * The figure's texts above and under a line that starts at (x, y) and is `figureWidth` long: it runs to the right, or up
 * when `upright`.
 */
export function figureTexts(figure: Figure, x: number, y: number, upright: boolean, withWord: boolean): TextItem[] {
  const role = toneRoles(figure.tone).text;
  const quiet = figure.tone === 'plain' ? 'quiet' : role;
  const width = figureWidth(figure, withWord);
  const word = withWord ? figure.word : '';
  const items: TextItem[] = [];
  const put = (key: string, words: string, start: number, off: number, height: number) => {
    const [textX, textY] = upright ? [x + off, y - start] : [x + start, y + off];
    items.push(text(key, key === 'figure' ? role : quiet, textX, textY, words, height, 'start', upright));
  };
  const main = textWidth(figure.text, FIGURE_HEIGHT);
  const whole = word ? main + WORD_GAP + textWidth(word, WORD_HEIGHT) : main;
  const start = (width - whole) / 2;
  const tails = [figure.text, word].some((words) => textReach(words, 1).below > 0.1);
  const clear = tails ? CLEAR_WITH_TAILS : CLEAR_OF_LINE;
  put('figure', figure.text, start, -clear, FIGURE_HEIGHT);
  if (word) put('word', word, start + main + WORD_GAP, -clear, WORD_HEIGHT);
  if (figure.under) {
    put(
      'under',
      figure.under,
      (width - textWidth(figure.under, WORD_HEIGHT)) / 2,
      CLEAR_OF_LINE + WORD_HEIGHT,
      WORD_HEIGHT,
    );
  }
  return items;
}
