import { setImmediate } from 'node:timers/promises';
import { evaluate, type Job, type Report, type SimulationOptions, simulateJob, withSimulated } from '@fielded/core';
import { UsageError } from '../arguments.ts';
import type { Io } from '../io.ts';
import { startRun } from '../terminal/progress.ts';

/** The most joints made at one go: ten minutes' worth. */
const MOST = 1e9;

/** How to simulate, from the options of the command; undefined where none of them is given. */
export function readSimulation(values: Readonly<Record<string, string | boolean>>): SimulationOptions | undefined {
  if (values.simulate === undefined && values.seed === undefined && values.uniform === undefined) return undefined;
  return {
    count: values.simulate === undefined ? 100_000 : readWhole('simulate', String(values.simulate), 1, MOST),
    seed: values.seed === undefined ? 1 : readWhole('seed', String(values.seed), 0, 2 ** 32 - 1),
    distribution: values.uniform === true ? 'uniform' : 'normal',
  };
}

function readWhole(option: string, text: string, least: number, most: number): number {
  const number = Number(text.replaceAll(/(?<=\d)[ _,](?=\d{3}\b)/g, ''));
  if (Number.isInteger(number) && number >= least && number <= most) return number;
  throw new UsageError(`--${option} ${text} will not do. Write a whole number from ${least} to ${most}.`);
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
  const bar = startRun(io, asked.count, 'joints, Ctrl-C to end here');
  try {
    const run = simulateJob(job, asked, () => stopped);
    for (;;) {
      const step = run.next();
      if (step.done) return step.value;
      await bar.show(step.value);
      // Lets the signal in.
      await setImmediate();
    }
  } finally {
    process.off('SIGINT', stop);
    await bar.clear();
  }
}
