import type { Language } from '@fielded/core';
import type { Scene } from '../scene.ts';

/** A picture of a document as pixels: a PNG file's bytes and its size in pixels. */
export interface Bitmap {
  readonly png: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** A drawing in a document at its scene's own size in mm, with the words under it. */
export interface PlacedFigure {
  readonly picture: Scene;
  readonly caption: string;
}

/** A cell of a table; a drawing stands in it as small as the column asks. */
export type Cell = string | Scene;

/** A table whose first row is repeated on every page. Column widths are shares of the text's width. */
export interface Table {
  readonly kind: 'table';
  /** What the table is, for readers who cannot see it. */
  readonly about: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
  /** Rows that sum up, set apart by a line. */
  readonly foot: readonly (readonly string[])[];
  readonly shares: readonly number[];
  readonly align: readonly ('start' | 'end')[];
  /** The row of the foot that is looked for first, counted from 0: it stands out. */
  readonly total?: number;
  /** Rows close together, for a list that should stay on one page. */
  readonly dense?: boolean;
}

/** One piece of a document, from top to bottom. */
export type Block =
  | { readonly kind: 'letterhead'; readonly name: string; readonly address: readonly string[]; readonly logo?: Bitmap }
  | { readonly kind: 'title'; readonly text: string }
  /** `whole`: what follows up to the next heading stays on one page with it where a page holds it. */
  | { readonly kind: 'heading'; readonly text: string; readonly whole?: boolean }
  | { readonly kind: 'paragraph'; readonly text: string; readonly tone?: 'trouble' | 'quiet' }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  /** Names with values beside them, such as number and date. */
  | { readonly kind: 'facts'; readonly facts: readonly (readonly [string, string])[] }
  | { readonly kind: 'figures'; readonly figures: readonly PlacedFigure[] }
  | Table
  /** Lines to sign on, side by side. */
  | { readonly kind: 'signatures'; readonly names: readonly string[] };

/** A text document with drawings, the same for print, page and word processor. */
export interface TextDocument {
  readonly title: string;
  /** BCP 47 tag of its language. */
  readonly language: string;
  /** What stands at the foot of every page, before the page's number. */
  readonly foot: string;
  readonly blocks: readonly Block[];
  /** What the pages are called in, for those who cannot see them; English unless told. */
  readonly spoken?: Language;
}
