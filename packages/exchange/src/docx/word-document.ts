/** A drawing for a word processor: vectors, with the same as pixels beside them for programs that read no SVG. Sizes mm. */
export interface WordPicture {
  readonly svg: string;
  readonly png: Uint8Array;
  readonly width: number;
  readonly height: number;
  /** What it shows, for readers who cannot see it. */
  readonly alt: string;
}

export type WordCell<P = WordPicture> = string | P;

/** One piece of a document for a word processor, from top to bottom; `P` is what its pictures are. */
export type WordBlock<P = WordPicture> =
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
      readonly figures: readonly { readonly picture: P; readonly caption: string }[];
    }
  | {
      readonly kind: 'table';
      readonly head: readonly string[];
      readonly rows: readonly (readonly WordCell<P>[])[];
      readonly foot: readonly (readonly string[])[];
      /** Column widths as shares of the text's width. */
      readonly shares: readonly number[];
      readonly align: readonly ('start' | 'end')[];
      /** The row of the foot that stands out, counted from 0. */
      readonly total?: number;
    }
  | { readonly kind: 'signatures'; readonly names: readonly string[] };

/** A document without its paper. */
export interface WordText<P = WordPicture> {
  readonly title: string;
  /** BCP 47 tag. */
  readonly language: string;
  readonly foot: string;
  readonly blocks: readonly WordBlock<P>[];
}

export interface WordDocument extends WordText {
  /** Paper, mm. */
  readonly paper: { readonly width: number; readonly height: number };
}

/** A document whose drawings become pictures, one after another, by `paint`. */
export async function paintText<D extends object>(
  text: WordText<D>,
  paint: (drawing: D) => WordPicture | Promise<WordPicture>,
): Promise<WordText> {
  const blocks: WordBlock[] = [];
  for (const block of text.blocks) {
    if (block.kind === 'figures') {
      const figures: { picture: WordPicture; caption: string }[] = [];
      for (const { picture, caption } of block.figures) figures.push({ picture: await paint(picture), caption });
      blocks.push({ kind: 'figures', figures });
    } else if (block.kind === 'table') {
      const rows: WordCell[][] = [];
      for (const row of block.rows)
        rows.push(await Promise.all(row.map((cell) => (typeof cell === 'string' ? cell : paint(cell)))));
      blocks.push({ ...block, rows });
    } else blocks.push(block);
  }
  return { ...text, blocks };
}
