import { setImmediate } from 'node:timers/promises';
import { evaluate, type Job, type Report, type SimulationOptions, simulateJob, withSimulated } from '@fielded/core';
import type { Io } from '../io.ts';
import { startRun } from '../terminal/progress.ts';

/** The most joints made at one go: ten minutes' worth. */
export const MOST_SIMULATED = 1e9;

/** How to simulate, from the options of the command; undefined where none of them is given. */
export function readSimulation(given: {
  readonly simulate: number | undefined;
  readonly seed: number | undefined;
  readonly uniform: boolean;
}): SimulationOptions | undefined {
  const { simulate = 100_000, seed = 1, uniform } = given;
  if (given.simulate === undefined && given.seed === undefined && !uniform) return undefined;
  return { count: simulate, seed, distribution: uniform ? 'uniform' : 'normal' };
}

/**
 * The report on a job, its spread simulated as asked: with a bar on a terminal, and Ctrl-C ends the run with the joints
 * made so far.
 */
export async function evaluateJob(job: Job, asked: SimulationOptions | undefined, io: Io): Promise<Report> {
  if (asked === undefined) return evaluate(job);
  // A single joint first: whether there is a spread at all, and everything else of the report.
  const report = evaluate(job, { simulation: { ...asked, count: 1 } });
  if (report.spread === undefined) return report;
  return { ...report, spread: withSimulated(report.spread, await simulateLong(job, asked, io)) };
}

async function simulateLong(job: Job, asked: SimulationOptions, io: Io) {
  let stopped = false;
  const stop = () => {
    stopped = true;
  };
  process.once('SIGINT', stop);
  const bar = startRun(io, asked.count);
  try {
    const run = simulateJob(job, asked, () => stopped);
    for (;;) {
      const step = run.next();
      if (step.done) return step.value;
      await bar.show(step.value);
      // Yields, so that Ctrl-C is handled.
      await setImmediate();
    }
  } finally {
    process.off('SIGINT', stop);
    await bar.clear();
  }
}
