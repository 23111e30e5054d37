import { CUTTING_WORDS } from './cutting.ts';
import { PLAN_WORDS } from './plan.ts';
import { QUOTE_TABLE_WORDS } from './quote.ts';
import { REMARK_WORDS } from './remarks.ts';
import { REPORT_WORDS } from './report.ts';
import { SOLVE_WORDS } from './solve.ts';
import { SPREAD_WORDS } from './spread.ts';
import { TRACE_WORDS } from './trace.ts';
import { USAGE_WORDS } from './usage.ts';

type Sentences = typeof CUTTING_WORDS &
  typeof PLAN_WORDS &
  typeof QUOTE_TABLE_WORDS &
  typeof REMARK_WORDS &
  typeof REPORT_WORDS &
  typeof SOLVE_WORDS &
  typeof SPREAD_WORDS &
  typeof TRACE_WORDS &
  typeof USAGE_WORDS;

/**
 * Every line that the command prints for makers, in English: headings, labels, remarks, what is wrong with what it was given. Keys start
 * with `print.`; all else is as in the catalogue of core. The texts of its help stand in the table of commands.
 */
export const CLI_ENGLISH: Sentences = {
  ...CUTTING_WORDS,
  ...PLAN_WORDS,
  ...QUOTE_TABLE_WORDS,
  ...REMARK_WORDS,
  ...REPORT_WORDS,
  ...SOLVE_WORDS,
  ...SPREAD_WORDS,
  ...TRACE_WORDS,
  ...USAGE_WORDS,
};
