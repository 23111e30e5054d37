/** A drawing for a word processor: vectors, with the same as pixels beside them for programs that read no SVG. Sizes mm. */
export interface WordPicture {
  readonly svg: string;
  readonly png: Uint8Array;
  readonly width: number;
  readonly height: number;
  /** What it shows, for readers who cannot see it. */
  readonly alt: string;
}

export type WordCell = string | WordPicture;

/** One piece of a document for a word processor, from top to bottom. */
export type WordBlock =
  | {
      readonly kind: 'letterhead';
      readonly name: string;
      readonly address: readonly string[];
      readonly logo?: { readonly png: Uint8Array; readonly width: number; readonly height: number };
    }
  | { readonly kind: 'title' | 'heading'; readonly text: string }
  | { readonly kind: 'paragraph'; readonly text: string; readonly tone?: 'trouble' | 'quiet' }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  | { readonly kind: 'facts'; readonly facts: readonly (readonly [string, string])[] }
  | {
      readonly kind: 'figures';
      readonly figures: readonly { readonly picture: WordPicture; readonly caption: string }[];
    }
  | {
      readonly kind: 'table';
      readonly head: readonly string[];
      readonly rows: readonly (readonly WordCell[])[];
      readonly foot: readonly (readonly string[])[];
      /** Column widths as shares of the text's width. */
      readonly shares: readonly number[];
      readonly align: readonly ('start' | 'end')[];
    }
  | { readonly kind: 'signatures'; readonly names: readonly string[] };

export interface WordDocument {
  readonly title: string;
  /** BCP 47 tag. */
  readonly language: string;
  readonly foot: string;
  /** Paper, mm. */
  readonly paper: { readonly width: number; readonly height: number };
  readonly blocks: readonly WordBlock[];
}
