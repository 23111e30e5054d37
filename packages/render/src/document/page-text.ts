import { type Item, text } from '../scene.ts';
import { breakLines, fitText } from '../text/measure-text.ts';

/** Margins, mm. */
export const SIDE = 20;
/** Heights of capitals, mm, and the distance of their base lines in heights. */
export const BODY = 2.2;
export const SMALL = 1.9;
export const LEADING = 1.95;

/** A part of a page, `height` mm high, drawn at the left margin from the y it is given. */
export interface Piece {
  readonly height: number;
  readonly draw: (y: number, key: string) => Item[];
  /** Room that has to be left under it for what follows, mm. */
  readonly keep?: number;
  /** Drawn again at the top of a page that goes on with the same table. */
  readonly repeat?: Piece;
}

/** Empty room of a height, mm. */
export function space(height: number): Piece {
  return { height, draw: () => [] };
}

/** Lines filled from the left, as text is; a word wider than the room is cut short. */
export function wrap(words: string, size: number, room: number): string[] {
  return breakLines(words, size, room).map((line) => fitText(line, size, room));
}

/** The roles that text on a page has. */
export type TextRole = 'text' | 'quiet' | 'trouble-text';

/** Words as lines of a size, each a piece of its own, so that a page may end between them. */
export function layLines(words: string, room: number, size: number, role: TextRole): Piece[] {
  return words
    .split('\n')
    .flatMap((paragraph) => wrap(paragraph, size, room))
    .map((line) => ({
      height: size * LEADING,
      draw: (y, key) => [text(key, role, 0, y + size * 1.3, line, size)],
    }));
}

/** Height of the capitals of a heading, mm. */
export const HEADING = 2.9;
