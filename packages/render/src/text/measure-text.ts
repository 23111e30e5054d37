import { ADVANCE_WIDTHS } from './advance-widths.ts';
import { LEFTWARDS_MARK, runsLeftwards } from './safe-text.ts';

/** Capital height over font size: IBM Plex Sans has 0.698; DejaVu Sans a little more. */
export const CAPITAL = 0.698;
/** The width assumed for a sign of a fallback font, and for a letter of one, in thousandths of an em. */
const UNKNOWN = 1400;
const UNKNOWN_LETTER = 1000;
/** Scripts whose signs fill a square of one em each, and between any two of which a line may be broken. */
const SQUARE = /[\p{sc=Han}\p{sc=Hiragana}\p{sc=Katakana}\p{sc=Hangul}\p{sc=Bopomofo}\u3000-\u303f\uff00-\uffef]/u;

/** Scripts of South-East Asia, written without spaces between words. */
const UNSPACED = /[\p{sc=Thai}\p{sc=Lao}\p{sc=Khmer}\p{sc=Myanmar}]/u;

const widths = new Map<number, number>(
  ADVANCE_WIDTHS.flatMap(([first, run]) => run.split(' ').map((width, i) => [first + i, Number(width)] as const)),
);

/**
 * The width of a line of text, mm, for capitals `height` mm tall: never less than what IBM Plex Sans or DejaVu Sans needs.
 *
 * A letter that neither font has is taken at 1 em, as those of East Asia are; any other sign at 1.4 em.
 */
export function textWidth(text: string, height: number): number {
  return widthOf(advanceOf(text), height);
}

/** The same in thousandths of an em, a whole number: those of parts add up to that of the whole. */
function advanceOf(text: string): number {
  let sum = 0;
  for (let i = 0; i < text.length; i += 1) {
    const code = text.codePointAt(i)!;
    // Two halves make one sign.
    if (code > 0xffff) i += 1;
    sum += widths.get(code) ?? unknownWidth(code);
  }
  return sum;
}

function widthOf(advance: number, height: number): number {
  return (advance / 1000) * (height / CAPITAL);
}

/** Kept with the others: to tell what a sign is takes longer than all else. */
function unknownWidth(code: number): number {
  const glyph = String.fromCodePoint(code);
  const letter = SQUARE.test(glyph) || /\p{L}/u.test(glyph);
  // Marks stand over the letter before them; signs of format are not seen.
  const width = /[\p{M}\p{Cf}]/u.test(glyph) ? 0 : letter ? UNKNOWN_LETTER : UNKNOWN;
  widths.set(code, width);
  return width;
}

/** How far a text reaches above and below its baseline, mm: figures and letters without tails stand on it. */
export function textReach(text: string, height: number): { above: number; below: number } {
  const below = /^[\d. ≈R°×+−a-fhik-or-xz]*$/.test(text) ? 0.05 : /^[\d., ≈ØR°×+−/]*$/.test(text) ? 0.22 : 0.31;
  const above = /^[\d., ≈ØR°×+−/]*$/.test(text) ? 1.09 : 1.2;
  return { above: height * above, below: height * below };
}

/** The text cut to fit into `room` mm, with an ellipsis when something had to go. */
export function fitText(text: string, height: number, room: number): string {
  if (textWidth(text, height) <= room) return text;
  const glyphs = [...text];
  let sum = textWidth('…', height);
  let kept = 0;
  while (kept < glyphs.length) {
    sum += textWidth(glyphs[kept]!, height);
    if (sum > room) break;
    kept += 1;
  }
  return `${glyphs.slice(0, kept).join('').trimEnd()}…`;
}

/** The largest height of capitals up to `height`, but no less than `least`, at which a text fits into `room` mm. */
export function heightToFit(text: string, height: number, least: number, room: number): number {
  return Math.max(least, Math.min(height, (0.999 * height * room) / Math.max(1e-6, textWidth(text, height))));
}

/** The text as lines no wider than `room` mm, broken between words and about equally long; see `breakLines`. */
export function wrapText(text: string, height: number, room: number): string[] {
  const words = measureWords(text);
  let lines = layWords(words, height, room);
  for (let narrower = room * 0.95; lines.length > 1 && narrower > room / 3; narrower *= 0.95) {
    const balanced = layWords(words, height, narrower);
    if (balanced.length > lines.length) break;
    lines = balanced;
  }
  return runAsOne(text, lines).map((line) => fitText(line, height, room));
}

const MOST_TITLE_LINES = 3;

/**
 * A title as up to three lines no wider than `room` mm, with `tail` behind its last word, such as a scale: a longer title ends in
 * an ellipsis, and never loses its tail.
 */
export function wrapTitle(title: string, tail: string, height: number, room: number): string[] {
  const bound = tail && `\u00a0\u00a0${tail}`;
  const lines = wrapText(`${title.replaceAll('  ', '\u00a0\u00a0')}${bound}`, height, room);
  if (lines.length > MOST_TITLE_LINES) {
    const last = fitText(`${lines[MOST_TITLE_LINES - 1]} …`, height, room - textWidth(bound, height));
    lines.splice(MOST_TITLE_LINES - 1, Infinity, `${last}${bound}`);
  }
  return lines.map((line) => line.replaceAll('\u00a0\u00a0', '  '));
}

/**
 * Words on as few lines as hold them, a figure kept with its unit. Scripts of East Asia are broken between any two signs, those
 * of South-East Asia between words, and a word wider than the room anywhere.
 */
export function breakLines(text: string, height: number, room: number): string[] {
  return runAsOne(text, layWords(measureWords(text), height, room));
}

/** A stretch of a text with its length in thousandths of an em. */
interface Stretch {
  readonly signs: string;
  readonly advance: number;
}

/** What stands between two spaces, or a word of a script without spaces. */
interface Word extends Stretch {
  /** What a line may be broken between; a word wider than the room is broken anywhere. */
  readonly parts: readonly Stretch[];
  /** Follows a space; else the word before it. */
  readonly apart: boolean;
}

/** The words of a text, measured once for however many widths are tried. */
function measureWords(text: string): Word[] {
  // Most texts are in no such script: the whole is asked before each word is.
  const unspaced = UNSPACED.test(text);
  const square = SQUARE.test(text);
  // A figure and its unit stay together.
  const bound = text.replace(/(\d) (mm|in)\b/g, '$1\u00a0$2');
  const written = bound.split(' ').filter(Boolean);
  return written.flatMap((run) =>
    (unspaced && UNSPACED.test(run) ? wordsOf(run) : [run]).map((signs, i): Word => {
      const word = measure(signs);
      return { ...word, parts: square ? squaresOf(signs).map(measure) : [word], apart: i === 0 };
    }),
  );
}

function measure(signs: string): Stretch {
  return { signs, advance: advanceOf(signs) };
}

/** Words on as few lines as hold them. */
function layWords(words: readonly Word[], height: number, room: number): string[] {
  const lines: string[] = [];
  let current = '';
  // Its length is added up: measured anew with each word, a long line would take as many steps as it has words.
  let length = 0;
  const space = advanceOf(' ');
  for (const word of words) {
    const parts = widthOf(word.advance, height) > room ? [...word.signs].map(measure) : word.parts;
    for (const [i, { signs, advance }] of parts.entries()) {
      const apart = current && word.apart && i === 0;
      const longer = length + (apart ? space : 0) + advance;
      if (!current || widthOf(longer, height) <= room) {
        current = `${current}${apart ? ' ' : ''}${signs}`;
        length = longer;
      } else {
        lines.push(current);
        current = signs;
        length = advance;
      }
    }
  }
  if (current) lines.push(current);
  return lines;
}

/** Lines of a text, each made to run the way the text as a whole does. */
function runAsOne(text: string, lines: readonly string[]): string[] {
  if (!runsLeftwards(text)) return [...lines];
  return lines.map((line) => (runsLeftwards(line) ? line : LEFTWARDS_MARK + line));
}

/** The words of a script without spaces, by the dictionary that comes with JavaScript. */
function wordsOf(text: string): string[] {
  return [...new Intl.Segmenter('th', { granularity: 'word' }).segment(text)].map(({ segment }) => segment);
}

/** Signs that fill a square, and what stands between such. */
function squaresOf(word: string): string[] {
  const parts: string[] = [];
  for (const sign of word) {
    const last = parts.at(-1);
    if (last === undefined || SQUARE.test(sign) || SQUARE.test(last)) parts.push(sign);
    else parts[parts.length - 1] = last + sign;
  }
  return parts;
}
