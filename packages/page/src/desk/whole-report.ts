import { evaluate, type Job, type Report } from '@fielded/core';
import { signal } from '@preact/signals';
import { fetchPart } from './fetch-part.ts';

/**
 * Everything a job is asked beyond its joint: knives, spread, seasons, doors, advice. Fetched when a job first asks for it.
 *
 * A spread takes a hundred times longer than all else together, so it is worked out in a worker: until it has come the one
 * before stands, of the same job. Read within a signal's computation, which is told when it has come.
 */
export function createWholeAnswer(): (job: Job) => Report {
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
        // The next spread asks for the worker again; this one is worked out on the page itself.
        beside = null;
        done(job, evaluate(job));
      },
    );
  };
  // Asked for twice of one job, before it is shown and then to show it, it is worked out once.
  let without: { readonly job: Job; readonly report: Report } | null = null;
  const withoutSpread = (job: Job): Report => {
    const { spread: _, ...rest } = job;
    if (without?.job !== job) without = { job, report: evaluate(rest) };
    return without.report;
  };
  return (job) => {
    if (job.spread === undefined) return withoutSpread(job);
    const known = last.value;
    if (known?.job === job) return known.report;
    ask(job);
    const report = withoutSpread(job);
    const { spread } = known?.report ?? {};
    return spread && known?.job.title === job.title ? { ...report, spread } : report;
  };
}
