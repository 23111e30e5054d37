import { DEFAULTS } from '../job/defaults.ts';
import type { Job } from '../job/job.ts';
import { formatLength, formatNumber } from '../measure/format.ts';

/** The rules that blanks and timber go by where no shop file gives any: their defaults, in words. None where every job has a shop. */
export function assumedRules(jobs: readonly Job[], units: Job['units']): string[] {
  if (jobs.every(({ shop }) => shop !== undefined)) return [];
  const { rules } = DEFAULTS;
  const length = (mm: number) => formatLength(mm, units, 1);
  return [
    `${length(rules.overLength)} over in length`,
    `${length(rules.overWidth)} over in width`,
    `strips up to ${length(rules.stripWidth)}`,
    `${formatNumber(rules.yield * 100, 0)} % of what is ordered ends in rough pieces`,
    `a saw cut of ${length(rules.kerf)} with ${length(rules.edgeAllowance)} cleaned off each edge`,
    `end grain run from ${length(rules.leastEndGrainWidth)} of width`,
    `blanks up to ${length(rules.greatestBlankWidth)} wide`,
  ];
}
