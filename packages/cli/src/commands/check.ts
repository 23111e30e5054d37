import { setImmediate } from 'node:timers/promises';
import { readArguments, UsageError } from '../arguments.ts';
import { findJobs } from '../files/find-jobs.ts';
import type { Io } from '../io.ts';
import { plainReport } from '../report/plain-report.ts';
import { type Checked, summary } from '../report/summary.ts';
import { painter } from '../terminal/paint.ts';
import { startProgress } from '../terminal/progress.ts';
import { exitStatus, openShop, readOneJob } from './read-jobs.ts';
import { evaluateJob, readSimulation } from './simulate.ts';

const OPTIONS = {
  json: { type: 'boolean' },
  shop: { type: 'string' },
  simulate: { type: 'string' },
  seed: { type: 'string' },
  uniform: { type: 'boolean' },
} as const;

/** `fielded check`: the report on one job, or a table of several. Gives the greatest exit status of them all. */
export async function check(argv: readonly string[], io: Io): Promise<number> {
  const { values, positionals } = readArguments(argv, OPTIONS, 'check');
  if (positionals.length === 0)
    throw new UsageError('check needs a job file, or a folder of them. See fielded help check.');
  const shop = await openShop(values.shop as string | undefined, io);
  if (shop === null) return 2;

  const simulation = readSimulation(values);
  const found = positionals.map(findJobs);
  const jobs = found.flatMap((one) => one.jobs);
  const several = positionals.length > 1 || found.some((one) => one.folder);
  const progress = startProgress(io, jobs.length);
  const faults: string[] = [];
  // The bar has standard error to itself until it is cleared; faults follow it.
  const held: Io = { ...io, err: async (text) => void faults.push(text) };
  const checked: Checked[] = [];
  for (const job of jobs) {
    await progress.step(job.path);
    // Lets an interrupt in between two jobs.
    await setImmediate();
    const read = await readOneJob(job, shop, held);
    checked.push({ path: job.path, report: read === null ? null : await evaluateJob(read, simulation, io) });
  }
  await progress.clear();
  await io.err(faults.join(''));
  await io.out(values.json ? toJson(checked, several) : toText(checked, several, io));
  return Math.max(...checked.map(({ report }) => exitStatus(report)));
}

function toText(checked: readonly Checked[], several: boolean, io: Io): string {
  const paint = painter(io.colour);
  if (several) return summary(checked, paint);
  const [{ path, report }] = checked as readonly [Checked];
  return report === null ? '' : plainReport(report, path, paint);
}

/** One report as an object, several as a list of objects that name their files; nothing for jobs that were not read. */
function toJson(checked: readonly Checked[], several: boolean): string {
  const reports = checked.flatMap(({ path, report }) => (report === null ? [] : [{ file: path, ...report }]));
  if (several) return `${JSON.stringify(reports, null, 2)}\n`;
  const report = checked[0]?.report;
  return report ? `${JSON.stringify(report, null, 2)}\n` : '';
}
