import { JOINT_ENGLISH } from './joint-english.ts';
import { ADVICE_WORDS } from './words/advice.ts';
import { DOOR_WORDS } from './words/door.ts';
import { KNIFE_WORDS } from './words/knife.ts';
import { PLAN_WORDS } from './words/plan.ts';
import { QUOTE_SOURCE_WORDS } from './words/quote.ts';
import { SEASON_WORDS } from './words/season.ts';
import { SETUP_WORDS } from './words/setup.ts';
import { SOLVE_WORDS } from './words/solve.ts';
import { SPREAD_WORDS } from './words/spread.ts';

type Sentences = typeof JOINT_ENGLISH &
  typeof ADVICE_WORDS &
  typeof DOOR_WORDS &
  typeof KNIFE_WORDS &
  typeof QUOTE_SOURCE_WORDS &
  typeof SEASON_WORDS &
  typeof PLAN_WORDS &
  typeof SETUP_WORDS &
  typeof SOLVE_WORDS &
  typeof SPREAD_WORDS;

/**
 * What each problem and each verdict says, in English: one entry a sentence, or a few that belong together. A key is a
 * problem's code, or a code and a variant (`code.variant`). `{name}` stands for a word, `{name:path}` for a place of the job file, and a figure is given with its kind:
 * `{name:length}`, `{name:degrees}`, `{name:number}`, `{name:count}`, `{name:percent}`, `{name:area}`, `{name:spans}` (from a
 * length to another), `{name:share}` (of 1), `{name:grouped}` (a large count), `{name:said}` and `{name:list}` (other sentences). `[term]` stands for a term of terms.ts that is British or American.
 *
 * Entries of a room stand in its file under words/; a new one may as well stand here.
 */
export const ENGLISH: Sentences = {
  ...JOINT_ENGLISH,
  ...ADVICE_WORDS,
  ...DOOR_WORDS,
  ...KNIFE_WORDS,
  ...QUOTE_SOURCE_WORDS,
  ...SEASON_WORDS,
  ...PLAN_WORDS,
  ...SETUP_WORDS,
  ...SOLVE_WORDS,
  ...SPREAD_WORDS,
};
