import { CHART_WORDS } from './english/chart.ts';
import { EDGE_WORDS } from './english/edge.ts';
import { KNIFE_WORDS } from './english/knife.ts';
import { LIST_WORDS } from './english/list.ts';
import { NOTE_WORDS } from './english/note.ts';
import { PLAN_WORDS } from './english/plan.ts';
import { SAMPLE_WORDS } from './english/sample.ts';
import { SHEET_WORDS } from './english/sheet.ts';
import { VIEW_ENGLISH } from './english/view.ts';

/**
 * Every word that drawings and sheets are lettered with, in English, by keys that stand in for them in the file of another
 * language.
 *
 * Each room has a file under english/ with its words and a `say` for them; what draws takes that one alone, so that a page
 * loads the words of what it draws. To add words: write an entry in the room's file, or in a new one that is joined here, and say it
 * with the report, which holds units and language: `sayEdge('label.reach', { cut, mm: 12 }, report)`. An entry is a whole
 * sentence, heading or label with its figures named (`{mm:length}`; kinds stand with `ENGLISH` in core), never a piece to be put
 * together with others; one and more than one are two entries (`.one`, `.more`). Figures that are drawn by themselves go through
 * `figureText`, which knows the language's decimal sign. No key stands twice, here or in core or in the command's own words.
 */
export const RENDER_ENGLISH: typeof EDGE_WORDS &
  typeof NOTE_WORDS &
  typeof VIEW_ENGLISH &
  typeof CHART_WORDS &
  typeof SHEET_WORDS &
  typeof KNIFE_WORDS &
  typeof SAMPLE_WORDS &
  typeof PLAN_WORDS &
  typeof LIST_WORDS = {
  ...EDGE_WORDS,
  ...NOTE_WORDS,
  ...VIEW_ENGLISH,
  ...CHART_WORDS,
  ...SHEET_WORDS,
  ...KNIFE_WORDS,
  ...SAMPLE_WORDS,
  ...PLAN_WORDS,
  ...LIST_WORDS,
};
