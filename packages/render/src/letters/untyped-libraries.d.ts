// The parts that are used of libraries that bring no types of their own, or types that differ from what they export.

declare module 'fontkit' {
  import type { GlyphRun } from './typefaces.ts';

  interface Font {
    readonly postscriptName: string;
    readonly familyName: string;
    readonly unitsPerEm: number;
    /** Those that were asked for, kept by their number. */
    _glyphs: Record<number, unknown>;
    hasGlyphForCodePoint(code: number): boolean;
    layout(text: string, features: readonly string[]): GlyphRun;
  }
  export function create(data: Uint8Array): Font | { readonly fonts: readonly Font[] };
}

declare module 'bidi-js' {
  interface Bidi {
    getEmbeddingLevels(text: string, base: 'ltr' | 'rtl'): { readonly levels: Uint8Array };
    getMirroredCharacter(sign: string): string | null;
  }
  export default function bidiFactory(): Bidi;
}
