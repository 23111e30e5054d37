import { SAME_LENGTH } from '@fielded/geometry';
import { rulesOf } from '../job/defaults.ts';
import type { Job } from '../job/job.ts';
import { designInsertion } from '../joint/fit.ts';
import type { Problem } from '../problem/problem.ts';
import { sayProblem, told } from '../problem/say.ts';
import { LEAST_BARE_SEEN, type SeasonReport } from '../season/seasons.ts';
import { LEAST_SPARE } from './verdict-sentence.ts';

/** The moistures that a joint is taken through. */
export const STATES = ['made', 'driest', 'dampest'] as const;
export type State = (typeof STATES)[number];

/** What the seasons spoil. */
export function seasonProblems(job: Job, report: SeasonReport): Problem[] {
  return [
    ...STATES.flatMap((state) => stateProblems(job, report, state)),
    ...formulaCaution(job, report),
    ...finishCaution(job, report),
  ];
}

function stateProblems(job: Job, report: SeasonReport, state: State): Problem[] {
  const at = `season.${state}`;
  const { moisture, bottomGap, insertion } = report[state];
  const now = { when: told(`when.${state}`, {}), moisture };
  const least = rulesOf(job).leastEngagement;
  const problems: Problem[] = [];
  if (bottomGap < 0)
    problems.push(
      report.pinned === 'edge'
        ? sayProblem('bottoms-out.edge', at, { ...now, over: -bottomGap }, job)
        : sayProblem('bottoms-out', at, { ...now, each: -bottomGap, whole: -2 * bottomGap }, job),
    );
  // Said of the season at which least of it is in the groove: what puts that right does so at the others.
  if (state !== loosestState(report)) return [...problems, ...tightProblems(job, report, state)];
  if (insertion <= 0) {
    problems.push(sayProblem('leaves-groove', at, now, job));
  } else if (insertion < least - SAME_LENGTH) {
    problems.push(sayProblem('little-engagement', at, { ...now, insertion, least }, job));
  }
  return [...problems, ...tightProblems(job, report, state)];
}

/** The first state at which least of the tongue is in the groove. */
function loosestState(report: SeasonReport): State {
  return STATES.reduce((one, other) => (report[other].insertion < report[one].insertion ? other : one));
}

/**
 * A tongue that no longer slides at a season. One that is tight as made is spoken of again only where it then jams, and what would
 * put that right is said where it is called tight.
 */
function tightProblems(job: Job, report: SeasonReport, state: State): Problem[] {
  const at = `season.${state}`;
  const { moisture, clearance } = report[state];
  const made = report.made.clearance;
  const now = { when: told(`when.${state}`, {}), moisture };
  const least = job.fit.snug - SAME_LENGTH;
  if (clearance === null || made === null || made < -SAME_LENGTH || clearance >= least) return [];
  const over = -clearance;
  if (made < least) return over < LEAST_SPARE ? [] : [sayProblem('swells-tight.still', at, { ...now, over }, job)];
  const wedge = wedgeOf(job, report, state);
  if (wedge !== null) return [sayProblem('swells-tight.wedges', at, { ...now, ...wedge }, job)];
  if (Math.abs(clearance) < LEAST_SPARE) return [sayProblem('swells-tight.nothing', at, now, job)];
  return clearance < 0
    ? [sayProblem('swells-tight.thick', at, { ...now, over }, job)]
    : [sayProblem('swells-tight.little', at, { ...now, spare: clearance }, job)];
}

/** How far the tongue goes in, and how far the swollen panel would take it; null where it is not the way further in that wedges it. */
function wedgeOf(job: Job, report: SeasonReport, state: State): { deepest: number; reached: number } | null {
  const { room, bottomGap } = report[state];
  const reached = job.frame.groove.depth - bottomGap;
  const deepest = reached + room;
  const goesInAsMade = deepest >= designInsertion(job.frame) - SAME_LENGTH;
  return bottomGap >= 0 && room < 0 && goesInAsMade ? { deepest, reached } : null;
}

function formulaCaution(job: Job, report: SeasonReport): Problem[] {
  const outside = STATES.find((state) => report[state].formula === '13-3');
  return outside === undefined ? [] : [sayProblem('outside-coefficients', `season.${outside}`, {}, job)];
}

function finishCaution(job: Job, report: SeasonReport): Problem[] {
  const state = report.driest.bare >= report.dampest.bare ? 'driest' : 'dampest';
  const { bare } = report[state];
  if (bare < LEAST_BARE_SEEN) return [];
  const figures = { when: told(`when.${state}.within`, {}), bare };
  return [sayProblem('finish-before-glue-up', `season.${state}`, figures, job)];
}
