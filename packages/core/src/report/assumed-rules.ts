import { DEFAULTS } from '../job/defaults.ts';
import type { Job } from '../job/job.ts';
import { jointOf } from '../joint/frame.ts';
import { formatLength, formatNumber } from '../measure/format.ts';
import type { Units } from '../measure/length.ts';
import type { Rules } from '../shop/shop.ts';

/** The rules that blanks and timber go by. */
type TimberRule = keyof Pick<
  Rules,
  | 'overLength'
  | 'overWidth'
  | 'stripWidth'
  | 'yield'
  | 'kerf'
  | 'edgeAllowance'
  | 'leastEndGrainWidth'
  | 'greatestBlankWidth'
>;

/**
 * Figures of a cutting list that neither job nor shop gives, so that their defaults were taken, in words: the shop's rules for
 * blanks and timber, the gaps round doors in their openings, what goes into a joint, the frames' wood, the moisture of weights.
 */
export function assumedRules(jobs: readonly Job[], units: Units): string[] {
  const length = (mm: number) => formatLength(mm, units, 1);
  return [...jobs.flatMap((job) => assumedInJob(job, length)), ...assumedOfShops(jobs, length)].filter(
    (words, i, all) => all.indexOf(words) === i,
  );
}

function assumedOfShops(jobs: readonly Job[], length: (mm: number) => string): string[] {
  const { rules } = DEFAULTS;
  const words: Record<TimberRule, string> = {
    overLength: `${length(rules.overLength)} over in length`,
    overWidth: `${length(rules.overWidth)} over in width`,
    stripWidth: `strips up to ${length(rules.stripWidth)}`,
    yield: `${formatNumber(rules.yield * 100, 0)} % of what is ordered ends in rough pieces`,
    kerf: `a saw cut of ${length(rules.kerf)}`,
    edgeAllowance: `${length(rules.edgeAllowance)} cleaned off each sawn edge`,
    leastEndGrainWidth: `end grain run from ${length(rules.leastEndGrainWidth)} of width`,
    greatestBlankWidth: `blanks up to ${length(rules.greatestBlankWidth)} wide`,
  };
  return (Object.keys(words) as TimberRule[])
    .filter((rule) => jobs.some(({ shop }) => shop === undefined || shop.assumedRules?.includes(rule)))
    .map((rule) => words[rule]);
}

function assumedInJob({ doors, frame, panel, season }: Job, length: (mm: number) => string): string[] {
  const gaps = new Set(doors.flatMap(({ hungIn }) => hungIn?.assumed ?? []));
  const joint = jointOf(frame);
  return [
    ...(gaps.has('gap') ? [`${length(DEFAULTS.doorGap)} between doors and carcase`] : []),
    ...(gaps.has('between') ? [`${length(DEFAULTS.between)} between leaves`] : []),
    ...(frame.joint === undefined ? [`rails coped ${length(joint.length)} into each side`] : []),
    ...(panel.species !== undefined && frame.species === undefined ? ["frames of the panels' wood"] : []),
    ...(panel.species !== undefined && season === undefined ? ['weights at 12 % moisture'] : []),
  ];
}
