import { setImmediate } from 'node:timers/promises';
import type { ReadOptions, SimulationOptions } from '@fielded/core';
import { type Command, defineCommand } from '../command.ts';
import { findJobs } from '../files/find-jobs.ts';
import { type Io, safe } from '../io.ts';
import { jsonListText, jsonText } from '../report/json-text.ts';
import { plainReport } from '../report/plain-report.ts';
import { type Checked, summary } from '../report/summary.ts';
import { painter } from '../terminal/paint.ts';
import { startProgress } from '../terminal/progress.ts';
import { say, voiceOf } from '../words/say.ts';
import { exitStatus, openShop, readOneJob } from './read-jobs.ts';
import { FILE_ENDINGS, LANGUAGE, SHOP } from './shared-options.ts';
import { evaluateJob, MOST_SIMULATED, readSimulation } from './simulate.ts';

/** `fielded check`: the report on one job, or a table of several. Gives the greatest exit status of them all. */
export const check: Command = defineCommand(
  {
    summary: 'say whether the tongue enters the groove, and every figure',
    place: {
      name: 'JOB',
      least: 1,
      most: Number.POSITIVE_INFINITY,
      needs: 'a job file, or a folder of them',
      endings: FILE_ENDINGS,
    },
    about: [
      'Checks jobs: what the cuts leave, the tongue, the fit, the verdict, and what to do about every problem. One job gives a sheet to pin up by the machine; several, or a folder and the folders in it, give a table of them all.',
    ],
    options: {
      json: {
        says: 'print the report as JSON, lengths in mm at full precision; several jobs give a list of objects, each with its file',
      },
      shop: SHOP,
      language: LANGUAGE,
      simulate: {
        value: 'N',
        whole: [1, MOST_SIMULATED],
        says: "make N joints at random with the job's spread, 100,000 if not said; a long run shows how far it is, and Ctrl-C ends it with what there is",
      },
      seed: { value: 'N', whole: [0, 2 ** 32 - 1], says: 'other joints than those of seed 1' },
      uniform: { says: 'spread each ± evenly instead of normally, three deviations to the ±' },
    },
    after: ['The exit status is the greatest of all jobs. Faults stand on standard error as FILE:LINE:COLUMN lines.'],
    statuses: ['all is well', 'a job has an error', 'one could not be read'],
  },
  async ({ paths, values }, io) => {
    const shop = await openShop(values.shop, io);
    return shop === null ? 2 : checkJobs(paths, shop, values.json, readSimulation(values), io);
  },
);

async function checkJobs(
  paths: readonly string[],
  shop: ReadOptions['shop'],
  json: boolean,
  simulation: SimulationOptions | undefined,
  io: Io,
): Promise<number> {
  const found = paths.map(findJobs);
  const jobs = found.flatMap((one) => one.jobs);
  const several = paths.length > 1 || found.some((one) => one.folder);
  const progress = startProgress(io, jobs.length);
  const faults: string[] = [];
  // Faults wait until the bar is cleared: both use standard error.
  const held: Io = { ...io, err: async (text) => void faults.push(text) };
  const checked: Checked[] = [];
  // As JSON each report is put into words at once: a thousand of them need not be kept.
  const texts: string[] = [];
  let status = 0;
  for (const job of jobs) {
    await progress.step(job.path);
    // Yields, so that Ctrl-C is handled between jobs.
    await setImmediate();
    const read = await readOneJob(job, shop, held);
    const report = read === null ? null : await evaluateJob(read, simulation, io);
    if (simulation !== undefined && report !== null && report.spread === undefined)
      faults.push(`${safe(job.path)}  ${say('print.nothing-simulated', {}, voiceOf(io))}\n`);
    status = Math.max(status, exitStatus(report));
    if (!json) checked.push({ path: job.path, report });
    else if (report !== null) texts.push(jsonText(several ? { file: job.path, ...report } : report));
  }
  await progress.clear();
  await io.err(faults.join(''));
  if (json) await io.out(several ? jsonListText(texts) : texts.join(''));
  else await io.out(toText(checked, several, io));
  return status;
}

function toText(checked: readonly Checked[], several: boolean, io: Io): string {
  const paint = painter(io.colour);
  if (several) return summary(checked, voiceOf(io), paint);
  const [{ path, report }] = checked as readonly [Checked];
  return report === null ? '' : plainReport(report, path, paint);
}
