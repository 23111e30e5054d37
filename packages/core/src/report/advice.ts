import { canBeRead } from '../job/can-be-read.ts';
import type { Job } from '../job/job.ts';
import type { FitReport } from '../joint/fit-report.ts';
import { FIT_CODES } from '../problem/codes.ts';
import type { Advice, Problem, Said } from '../problem/problem.ts';
import { sayAdvice, told, withAdvice } from '../problem/say.ts';
import type { SeasonReport } from '../season/seasons.ts';
import {
  depthsToTry,
  groovesToTry,
  landsToTry,
  presentationsToTry,
  reachesAndDepthsToTry,
  reachesToTry,
} from './advice-candidates.ts';
import { agreeInSteps, type Found } from './agree-advice.ts';
import { applyWrites } from './apply-writes.ts';
import { Effort } from './effort.ts';
import type { MadeForCuts } from './knives.ts';
import type { PreparedJob } from './prepared-job.ts';
import { endsBeforeFrame } from './problems.ts';
import {
  clearingReachesToTry,
  copesToTry,
  engagementToTry,
  longerReachesToTry,
  looserInDampToTry,
  looserToTry,
  roomToTry,
  setbacksToTry,
  shorterReachesToTry,
  stickingsToTry,
  tenonsToTry,
  thickerTonguesToTry,
} from './size-advice.ts';
import { LEAST_LIP } from './size-problems.ts';
import { firstOfEach } from './steps.ts';
import { type Tried, tryJob } from './try-job.ts';

/** The most advice given for one problem. */
const MOST_ADVICE = 2;

/**
 * The same problems with what would put each right, where something would.
 *
 * Every piece of advice is applied to the job and the whole of it evaluated anew: it is given only if its problem is gone
 * and no error or warning has come that was not there before, and no two ask for two values of one size. So no line contradicts another. Each way that is tried is a step.
 * `made` are the knives of the job's cuts: advice changes no panel and no shop, so that cuts it leaves alone keep theirs.
 */
export function* adviseInSteps(
  prepared: PreparedJob,
  season: SeasonReport | undefined,
  problems: readonly Problem[],
  made: MadeForCuts,
): Generator<void, Problem[]> {
  if (problems.length === 0) return [];
  const { job } = prepared;
  const effort = new Effort(job, prepared.edge);
  const known = new Set(problems.map(keyOf));
  const tried = new Map<string, Tried | null>();
  const tryOut = (advice: Advice): Tried | null => {
    const name = JSON.stringify(advice.writes);
    const before = tried.get(name);
    if (before !== undefined) return before;
    const changed = applyWrites(job, advice.writes);
    const after = canBeRead(changed) && effort.triesJob() ? tryJob(changed, made) : null;
    tried.set(name, after);
    return after;
  };
  const serves = (advice: Advice, problem: Problem): boolean => {
    const after = tryOut(advice);
    // What frees a tight tongue frees it in damp air too: it is said once.
    const goesOn = (each: Pick<Problem, 'code'>) => problem.code === 'tight' && each.code === 'swells-tight';
    const spoils = (each: Pick<Problem, 'severity' | 'code' | 'at'>) =>
      keyOf(each) === keyOf(problem) || goesOn(each) || (each.severity !== 'caution' && !known.has(keyOf(each)));
    if (after === null || after.fit().some(spoils) || after.joint().some(spoils)) return false;
    return effort.makesJob() && !after.making().some(spoils);
  };
  // Only the advice that helps is put into words.
  const mute = { ...prepared, job: { ...job, mute: true } };
  const found: Found[] = [];
  for (const problem of problems) {
    const ways = waysToTry(mute, season, problem, effort);
    const advice = ways === null ? null : yield* firstOfEach(ways, (each) => serves(each, problem));
    found.push({ problem, advice: advice === null ? null : advice.slice(0, MOST_ADVICE) });
  }
  const agreed = yield* agreeInSteps(found, serves);
  return agreed.map(({ problem, advice, waits }) => {
    if (advice === null) return problem;
    // Where the search was cut short, do not say that there is no advice.
    const none = advice.length === 0 && !effort.spent ? [nothingServes(problem)] : [];
    const further = waits ? [told('advice.waits', {})] : none;
    return withAdvice(
      problem,
      advice.map((each) => sayAdvice(each, job)),
      further,
      job,
    );
  });
}

function keyOf({ code, at }: Pick<Problem, 'code' | 'at'>): string {
  return `${code} ${at}`;
}

function nothingServes({ code, at }: Problem): Said {
  if (code === 'taken-from-drawing') return told('advice.redraw', {});
  if (at.startsWith('season.')) return told('advice.none.season', {});
  return (FIT_CODES as readonly string[]).includes(code) ? told('advice.none', {}) : told('advice.none.size', {});
}

/** The ways that may put a problem right, the likeliest first, each a list of which one piece is given; null where none is known. */
function waysToTry(
  { job, fit, tongue }: PreparedJob,
  season: SeasonReport | undefined,
  problem: Problem,
  effort: Effort,
): readonly Iterable<Advice>[] | null {
  const depths = () => depthsToTry(job, fit, effort);
  switch (problem.code) {
    case 'no-tongue':
    case 'cut-misses':
      return [depths()];
    case 'tight':
      return [
        inTurn(depths(), looserInDampToTry(job, season), reachesAndDepthsToTry(job, effort), groovesToTry(job, fit)),
      ];
    case 'will-not-enter':
    case 'loose':
      return [inTurn(depths(), reachesAndDepthsToTry(job, effort), groovesToTry(job, fit))];
    case 'stops-short':
      return endsBeforeFrame(job, fit.deepestInsertion ?? 0)
        ? [inTurn(reachesToTry(job, fit), reachesAndDepthsToTry(job, effort), depths())]
        : [depths(), inTurn(landsToTry(job), reachesToTry(job, fit))];
    case 'taken-from-drawing':
      return [presentationsToTry(job, problem.about?.cut)];
    case 'raise-hidden':
      return [longerReachesToTry(job)];
    case 'raises-meet':
      return [shorterReachesToTry(job, problem)];
    case 'feather-edge':
      return [thickerTonguesToTry(job, tongue)];
    case 'no-lip':
    case 'thin-lip':
      return [setbacksToTry(job, LEAST_LIP)];
    case 'cope-long':
      return [copesToTry(job), tenonsToTry(job)];
    case 'sticking-in-groove':
      return [setbacksToTry(job, LEAST_LIP), stickingsToTry(job)];
    case 'edge-meets-body':
    case 'edge-meets-nut':
      return [clearingReachesToTry(job, problem)];
    case 'no-swell-gap':
      return [roomToTry(job, USUAL_GAP)];
    default:
      return season === undefined ? null : seasonWays(job, fit, season, problem);
  }
}

/** Yields one list after the other, each made only when it is needed. */
function* inTurn<T>(...lists: readonly Iterable<T>[]): Generator<T> {
  for (const list of lists) yield* list;
}

/** A gap left where the job leaves none, mm: common practice for panels up to 400 mm wide. */
const USUAL_GAP = 2;

/** The same for what the seasons spoil. */
function seasonWays(
  job: Job,
  fit: FitReport,
  season: SeasonReport,
  { code, at, sentence }: Problem,
): readonly Iterable<Advice>[] | null {
  const state = (['made', 'driest', 'dampest'] as const).find((each) => at === `season.${each}`);
  if (state === undefined) return null;
  const { bottomGap, insertion, clearance } = season[state];
  switch (code) {
    case 'bottoms-out':
      return [roomToTry(job, -bottomGap)];
    case 'leaves-groove':
    case 'little-engagement':
      return [engagementToTry(job, insertion)];
    case 'swells-tight':
      // The advice stands where it is called tight as made.
      if (sentence === 'swells-tight.still') return null;
      return [[...reachesToTry(job, fit), ...looserToTry(job, job.fit.snug - (clearance ?? 0))]];
    default:
      return null;
  }
}
