import { DEFAULTS } from '../job/defaults.ts';
import type { Job } from '../job/job.ts';
import { jointOf } from '../joint/frame.ts';
import type { Report } from '../report/report.ts';
import type { AssumedFigure, QuoteAssumption } from './quote-report.ts';

/** Rules that decide how much timber is ordered whatever the doors, and those that matter only where panels ride in blanks. */
const ALWAYS = ['overLength', 'overWidth', 'yield', 'leastEndGrainWidth'] as const;
const IN_BLANKS = ['kerf', 'edgeAllowance', 'greatestBlankWidth'] as const;

/**
 * Figures that a quote's quantities follow from and that neither job nor shop gives: rules of the shop, gaps round doors that are
 * given by their opening, what goes into a joint, the frames' wood. None without doors: nothing is counted from them then.
 */
export function listAssumptions({ shop, doors, panel, frame }: Job, { blanks = [] }: Report): QuoteAssumption[] {
  if (doors.length === 0) return [];
  const rules = [...ALWAYS, ...(blanks.length > 0 ? IN_BLANKS : [])]
    .filter((rule) => shop === undefined || shop.assumedRules?.includes(rule))
    .map((what) => ({ what, value: what === 'yield' ? DEFAULTS.rules.yield * 100 : DEFAULTS.rules[what] }));
  const gaps = new Set(doors.flatMap(({ hungIn }) => hungIn?.assumed ?? []));
  return [
    ...rules,
    ...of(gaps.has('gap'), 'gap', DEFAULTS.doorGap),
    ...of(gaps.has('between'), 'between', DEFAULTS.between),
    ...of(frame.joint === undefined, 'coped', jointOf(frame).length),
    ...of(panel.species !== undefined && frame.species === undefined, 'frameWood', null),
  ];
}

function of(assumed: boolean, what: AssumedFigure, value: number | null): QuoteAssumption[] {
  return assumed ? [{ what, value }] : [];
}
