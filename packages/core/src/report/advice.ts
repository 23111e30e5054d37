import type { Job } from '../job/job.ts';
import type { FitReport } from '../joint/fit-report.ts';
import type { Advice, Problem, Said } from '../problem/problem.ts';
import { told, withAdvice } from '../problem/say.ts';
import { depthsToTry, groovesToTry, landsToTry, presentationsToTry, reachesToTry } from './advice-candidates.ts';
import { applyWrites } from './apply-writes.ts';
import { endsBeforeFrame } from './problems.ts';
import { type Tried, tryJob } from './try-job.ts';

/** More advice than this on one problem is no help. */
const MOST_ADVICE = 2;

/**
 * The same problems with what would put each right, where something would.
 *
 * Every piece of advice is applied to the job and the whole of it evaluated anew: it is given only if its problem is gone
 * and no error or warning has come that was not there before. So no line contradicts another.
 */
export function adviseAll(job: Job, fit: FitReport, problems: readonly Problem[]): Problem[] {
  const known = new Set(problems.map(keyOf));
  const tried = new Map<string, Tried>();
  const serves = (advice: Advice, problem: Problem): boolean => {
    const name = JSON.stringify(advice.writes);
    const after = tried.get(name) ?? tryJob(applyWrites(job, advice.writes));
    tried.set(name, after);
    const stays = after.problems.some((each) => keyOf(each) === keyOf(problem));
    return !stays && !after.problems.some((each) => each.severity !== 'caution' && !known.has(keyOf(each)));
  };
  return problems.map((problem) => {
    const ways = waysToTry(job, fit, problem);
    if (ways === null) return problem;
    const advice: Advice[] = [];
    for (const way of ways) {
      const found = advice.length < MOST_ADVICE ? way.find((each) => serves(each, problem)) : undefined;
      if (found) advice.push(found);
    }
    return withAdvice(problem, advice, advice.length === 0 ? [nothingServes(problem)] : [], job);
  });
}

function keyOf({ code, at }: Problem): string {
  return `${code} ${at}`;
}

function nothingServes({ code }: Problem): Said {
  return code === 'taken-from-drawing' ? told('advice.redraw', {}) : told('advice.none', {});
}

/** The ways that may put a problem right, the likeliest first, each a list of which one piece is given; null where none is known. */
function waysToTry(job: Job, fit: FitReport, { code, about }: Problem): readonly (readonly Advice[])[] | null {
  switch (code) {
    case 'no-tongue':
      return [depthsToTry(job, fit)];
    case 'will-not-enter':
    case 'tight':
    case 'loose':
      return [[...depthsToTry(job, fit), ...groovesToTry(job, fit)]];
    case 'stops-short':
      return endsBeforeFrame(job, fit.deepestInsertion ?? 0)
        ? [[...reachesToTry(job, fit), ...depthsToTry(job, fit)]]
        : [depthsToTry(job, fit), [...landsToTry(job), ...reachesToTry(job, fit)]];
    case 'taken-from-drawing':
      return [presentationsToTry(job, about?.cut)];
    default:
      return null;
  }
}
