import { DEFAULTS } from '../job/defaults.ts';
import type { Job } from '../job/job.ts';
import { jointOf } from '../joint/frame.ts';
import type { Units } from '../measure/length.ts';
import type { Voice } from '../problem/language.ts';
import { say } from '../problem/say.ts';
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
 * blanks and timber, the gaps round doors in their openings, what goes into a joint, the frames' wood, the moisture of weights. In the
 * language of the first job.
 */
export function assumedRules(jobs: readonly Job[], units: Units): string[] {
  const language = jobs[0]?.language;
  const voice: Voice = { units, ...(language && { language }) };
  const words = [...jobs.flatMap((job) => assumedInJob(job, voice)), ...assumedOfShops(jobs, voice)];
  return [...new Set(words)];
}

function assumedOfShops(jobs: readonly Job[], voice: Voice): string[] {
  const { rules } = DEFAULTS;
  const words: Record<TimberRule, string> = {
    overLength: say('timber.assumed.overLength', { over: rules.overLength }, voice),
    overWidth: say('timber.assumed.overWidth', { over: rules.overWidth }, voice),
    stripWidth: say('timber.assumed.stripWidth', { width: rules.stripWidth }, voice),
    yield: say('timber.assumed.yield', { percent: rules.yield * 100 }, voice),
    kerf: say('timber.assumed.kerf', { width: rules.kerf }, voice),
    edgeAllowance: say('timber.assumed.edgeAllowance', { width: rules.edgeAllowance }, voice),
    leastEndGrainWidth: say('timber.assumed.leastEndGrainWidth', { width: rules.leastEndGrainWidth }, voice),
    greatestBlankWidth: say('timber.assumed.greatestBlankWidth', { width: rules.greatestBlankWidth }, voice),
  };
  return (Object.keys(words) as TimberRule[])
    .filter((rule) => jobs.some(({ shop }) => shop === undefined || shop.assumedRules?.includes(rule)))
    .map((rule) => words[rule]);
}

function assumedInJob({ doors, frame, panel, season }: Job, voice: Voice): string[] {
  const gaps = new Set(doors.flatMap(({ hungIn }) => hungIn?.assumed ?? []));
  const { length } = jointOf(frame);
  return [
    ...(gaps.has('gap') ? [say('timber.assumed.gap', { gap: DEFAULTS.doorGap }, voice)] : []),
    ...(gaps.has('between') ? [say('timber.assumed.between', { gap: DEFAULTS.between }, voice)] : []),
    ...(frame.joint === undefined ? [say('timber.assumed.coped', { length }, voice)] : []),
    ...(panel.species !== undefined && frame.species === undefined ? [say('timber.assumed.wood', {}, voice)] : []),
    ...(panel.species !== undefined && season === undefined ? [say('timber.assumed.weight', {}, voice)] : []),
  ];
}
