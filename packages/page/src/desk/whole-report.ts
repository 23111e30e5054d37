import { evaluate, evaluateInSteps, type Job, type Report } from '@fielded/core';
import { signal } from '@preact/signals';
import { fetchPart } from './fetch-part.ts';

/** What answers whole jobs. */
export interface WholeAnswer {
  answer(job: Job): Report;
  /** Works the same out in steps of a few milliseconds, so that `answer` has it ready. */
  prepare(job: Job): Generator<void, void>;
}

/**
 * Answers a whole job: knives, spread, seasons, doors and advice beside its joint.
 *
 * A spread takes a hundred times as long as all else together, so a worker computes it: until it has come, the spread before
 * it stands, if it is of the same job. Ask for an answer within a signal's computation, which runs again when the spread has come.
 */
export function createWholeAnswer(): WholeAnswer {
  const last = signal<{ readonly job: Job; readonly report: Report } | null>(null);
  const done = (job: Job, report: Report) => {
    last.value = { job, report };
  };
  let beside: Promise<(job: Job) => void> | null = null;
  const ask = (job: Job) => {
    beside ??= fetchPart(() => import('./spread-beside.ts')).then(({ createBeside }) => createBeside(done));
    beside.then(
      (work) => work(job),
      () => {
        // The worker could not be fetched: compute this one here, and ask for the worker again with the next.
        beside = null;
        done(job, evaluate(job));
      },
    );
  };
  // The same job is asked for twice, ahead of time and to be shown: compute it once.
  let without: { readonly job: Job; readonly report: Report } | null = null;
  const withoutSpread = (job: Job): Report => {
    const { spread: _, ...rest } = job;
    if (without?.job !== job) without = { job, report: evaluate(rest) };
    return without.report;
  };
  return {
    answer(job) {
      if (job.spread === undefined) return withoutSpread(job);
      const known = last.value;
      if (known?.job === job) return known.report;
      ask(job);
      const report = withoutSpread(job);
      const { spread } = known?.report ?? {};
      return spread && known?.job.title === job.title ? { ...report, spread } : report;
    },
    *prepare(job) {
      if (without?.job === job) return;
      const { spread, ...rest } = job;
      if (spread !== undefined) ask(job);
      without = { job, report: (yield* evaluateInSteps(rest)).report };
    },
  };
}
