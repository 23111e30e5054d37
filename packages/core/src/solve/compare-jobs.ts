import type { Job } from '../job/job.ts';
import { makeEdge } from '../joint/edge.ts';
import type { Problem } from '../problem/problem.ts';
import { evaluate } from '../report/evaluate.ts';
import { joinFrame } from '../report/join.ts';
import { TARGETS, type Target } from './targets.ts';

/** A figure that changes with the setting. */
export interface Change {
  readonly name: string;
  readonly before: number | string | null;
  readonly after: number | string | null;
}

/** What else changes with a setting. */
export interface Compared {
  readonly changes: readonly Change[];
  /** Problems of the job that go with it, and new ones. */
  readonly problems: { readonly gone: readonly Problem[]; readonly come: readonly Problem[] };
}

/** What else changes between two states of a job, and the problems that go and come; `solvedFor` is left out. */
export function compareJobs(before: Job, after: Job, solvedFor: Target): Compared {
  return { changes: listChanges(before, after, solvedFor), problems: compareProblems(before, after) };
}

/** The verdict and the figures of the joint that are not as they were, but for the one solved for. */
function listChanges(before: Job, after: Job, solvedFor: Target): Change[] {
  const verdictOf = (job: Job) => joinFrame(job, makeEdge(job.panel, job.cuts)).fit.verdict;
  // `frontFace` and `backFace` are short for their `.most`.
  const known = [solvedFor.name, `${solvedFor.name}.most`, 'frontFace', 'backFace', 'face'];
  const figures = TARGETS.filter(({ name }) => !known.includes(name)).map(
    ({ name, read }): Change => ({ name, before: read(before), after: read(after) }),
  );
  const verdict: Change = { name: 'verdict', before: verdictOf(before), after: verdictOf(after) };
  return [verdict, ...figures].filter(hasChanged);
}

/** Problems that go with the change and problems that come, told apart by code and place. */
function compareProblems(before: Job, after: Job): Compared['problems'] {
  // Simulating would take longer than everything else together, and adds no problems of its own.
  const was = evaluate(withoutSpread(before)).problems;
  const is = evaluate(withoutSpread(after)).problems;
  const missingFrom = (list: readonly Problem[]) => (problem: Problem) =>
    !list.some(({ code, at }) => code === problem.code && at === problem.at);
  return { gone: was.filter(missingFrom(is)), come: is.filter(missingFrom(was)) };
}

function withoutSpread({ spread: _, ...job }: Job): Job {
  return job;
}

function hasChanged({ before, after }: Change): boolean {
  if (typeof before === 'number' && typeof after === 'number') return Math.abs(before - after) > 1e-9;
  return before !== after;
}
