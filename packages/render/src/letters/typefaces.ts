/// <reference path="./untyped-libraries.d.ts" />
import { create } from 'fontkit';

/** One step of a glyph's outline, in the font's units, y up. */
interface PathCommand {
  readonly command: 'moveTo' | 'lineTo' | 'quadraticCurveTo' | 'bezierCurveTo' | 'closePath';
  readonly args: readonly number[];
}

/** Glyphs from left to right as seen, with how far each moves on and is moved aside, in the font's units. */
export interface GlyphRun {
  readonly glyphs: readonly { readonly path: { readonly commands: readonly PathCommand[] } }[];
  readonly positions: readonly { readonly xAdvance: number; readonly xOffset: number; readonly yOffset: number }[];
  readonly advanceWidth: number;
}

/** A font that letters are drawn with, from a TrueType or OpenType file or the first of a collection. */
export interface Typeface {
  /** Its PostScript name, and the family that a style sheet names. */
  readonly name: string;
  readonly family: string;
  /** Whether it has a sign, given as a code point. */
  has(code: number): boolean;
  readonly unitsPerEm: number;
  /** Signs of one direction as glyphs: joined, kerned and placed as the font says. */
  layOut(text: string): GlyphRun;
  /** How far they run, in the font's units. */
  advance(text: string): number;
  /** The font as it was opened, for a document that embeds it, one after the other: its tables are read once for all of them. */
  embedded(): EmbeddedFont;
}

/** An opened font as the libraries that read and embed it hand it to each other. */
export interface EmbeddedFont {
  layout(text: string, features: readonly string[]): GlyphRun;
}

/** How many lengths of texts are kept: the words of drawings recur. */
const MOST_KEPT = 10_000;

/** Fonts that are tried in order: each sign is drawn with the first that has it. At least one. */
export type Typefaces = readonly [Typeface, ...Typeface[]];

/**
 * Reads fonts from the bytes of their files.
 *
 * @throws RangeError where the bytes are no font.
 */
export function readTypeface(bytes: Uint8Array): Typeface {
  let opened: ReturnType<typeof create>;
  try {
    opened = create(bytes);
  } catch {
    throw new RangeError('not a TrueType or OpenType font');
  }
  const font = 'fonts' in opened ? opened.fonts[0] : opened;
  if (font === undefined) throw new RangeError('a collection without fonts');
  const known = new Map<number, boolean>();
  const advances = new Map<string, number>();
  return {
    name: font.postscriptName,
    family: font.familyName,
    has: (code) => {
      let has = known.get(code);
      if (has === undefined) {
        has = font.hasGlyphForCodePoint(code);
        known.set(code, has);
      }
      return has;
    },
    unitsPerEm: font.unitsPerEm,
    layOut: (text) => font.layout(text, []),
    advance: (text) => {
      const known = advances.get(text);
      if (known !== undefined) return known;
      const { advanceWidth } = font.layout(text, []);
      if (advances.size < MOST_KEPT) advances.set(text, advanceWidth);
      return advanceWidth;
    },
    embedded: () => {
      // A glyph remembers the signs that it was first made for, and a PDF writes these down: each document has glyphs of its own.
      font._glyphs = {};
      return font;
    },
  };
}
