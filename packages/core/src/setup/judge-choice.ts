import type { Job } from '../job/job.ts';
import type { Advice, Problem } from '../problem/problem.ts';
import { advise, sayProblem, told, withAdvice } from '../problem/say.ts';
import { feedAgainst } from './hand.ts';
import type { Judged } from './ways.ts';
import type { Work } from './work.ts';

/** What is said of the way chosen: that there is none, and then which other head would do; or that it is not the run the job gives. */
export function judgeChoice(
  job: Job,
  work: Work,
  ways: readonly Judged[],
  way: Judged | undefined,
  advice: readonly Advice[] = [],
): Problem[] {
  const { cut, at, headName } = work;
  const about = { cut: cut.name, head: headName };
  // No way works: give the problems of the nearest one, and other heads.
  if (way === undefined) {
    if (ways.length === 0) return [];
    const further = nearest(ways).against.map(({ sentence, figures }) => ({ sentence: sentence!, figures: figures! }));
    const problem = sayProblem('cannot-be-run', at, { cut: cut.name, head: headName }, job, { about, further });
    return [advice.length === 0 ? problem : withAdvice(problem, advice, [], job)];
  }
  if (way.run === cut.run) return [];
  // Another run works: say what stands against the one given, and advise the other.
  const asGiven = nearest(ways.filter(({ run }) => run === cut.run));
  const further = asGiven.against.map(({ sentence, figures }) => ({ sentence: sentence!, figures: figures! }));
  const figures = {
    cut: cut.name,
    machine: way.machineName,
    run: told(`run.${way.run}`, {}),
    rotation: told(`rotation.${way.rotation}`, {}),
    feed: told(way.rotation === 'clockwise' ? 'feed.left-to-right' : 'feed.right-to-left', {}),
  };
  const problem = sayProblem(`another-run.${further.length === 0 ? 'both' : 'instead'}`, at, { cut: cut.name }, job, {
    about,
    further,
  });
  const index = job.cuts.indexOf(cut);
  const turn = feedAgainst(way.rotation) === 'left to right' ? 'advice.turn-over' : 'advice.run';
  return [
    withAdvice(problem, [advise(turn, figures, [{ path: ['cuts', index, 'run'], word: way.run }], job)], [], job),
  ];
}

/** The way with least against it. */
function nearest(ways: readonly Judged[]): Judged {
  return ways.reduce((one, other) => (other.against.length < one.against.length ? other : one));
}
