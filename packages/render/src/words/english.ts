import { EDGE_WORDS } from './english/edge.ts';

/**
 * Every word that drawings and sheets are lettered with, in English, by keys that stand in for them in the file of another
 * language.
 *
 * Each room has a file under english/ with its words and a `say` for them; what draws takes that one alone, so that a page
 * loads the words of what it draws. To add words: write an entry in the room's file, or in a new one that is joined here, and say it
 * with the report, which holds units and language: `sayEdge('label.reach', { cut, mm: 12 }, report)`. An entry is a whole
 * sentence, heading or label with its figures named (`{mm:length}`; kinds stand with `ENGLISH` in core), never a piece to be put
 * together with others; one and more than one are two entries (`.one`, `.more`). Figures that are drawn by themselves go through
 * `figureText`, which knows the language's decimal sign. A key is never the same as one of core's.
 */
export const RENDER_ENGLISH: typeof EDGE_WORDS = { ...EDGE_WORDS };
