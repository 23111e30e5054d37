import { CUTTING_WORDS } from './cutting.ts';
import { PLAN_WORDS } from './plan.ts';
import { QUOTE_TABLE_WORDS } from './quote.ts';
import { REMARK_WORDS } from './remarks.ts';
import { REPORT_WORDS } from './report.ts';
import { SOLVE_WORDS } from './solve.ts';
import { SPREAD_WORDS } from './spread.ts';
import { TRACE_WORDS } from './trace.ts';

type Sentences = typeof CUTTING_WORDS &
  typeof PLAN_WORDS &
  typeof QUOTE_TABLE_WORDS &
  typeof REMARK_WORDS &
  typeof REPORT_WORDS &
  typeof SOLVE_WORDS &
  typeof SPREAD_WORDS &
  typeof TRACE_WORDS;

/**
 * Every line that the command prints for makers, in English: headings, labels, remarks. Keys start with `print.`; all else is as in
 * the catalogue of core.
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
};
