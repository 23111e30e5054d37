import {
  evaluate,
  parseLength,
  type ReadOptions,
  type Solved,
  solve as solveJob,
  type Wanted,
  writeValues,
} from '@fielded/core';
import { UsageError } from '../arguments.ts';
import { type Command, defineCommand } from '../command.ts';
import { readText } from '../files/read-text.ts';
import { writeWhole } from '../files/write-whole.ts';
import { type Io, safe } from '../io.ts';
import { refusalLine } from '../report/list-faults.ts';
import { solvedReport } from '../report/solved-report.ts';
import { painter } from '../terminal/paint.ts';
import { openShop, readOneJob } from './read-jobs.ts';
import { FILE_ENDINGS, SHOP } from './shared-options.ts';

/**
 * `fielded solve`: the setting of one size that gives a wanted figure, to read, as JSON, or written into the job file.
 * Gives 0 where there is one, 1 where there is none, 2 for wrong use or a file that cannot be read or written.
 */
export const solve: Command = defineCommand(
  {
    summary: 'find the setting that gives the fit wanted',
    place: {
      name: 'JOB',
      least: 1,
      most: 1,
      needs: 'one job file',
      takes: 'one job file',
      endings: FILE_ENDINGS,
    },
    about: [
      'Finds the setting of one size that gives a figure of the joint its wanted value: what to set, how far to move and which way, what else changes. Where none gives it, says why and how near it can come.',
    ],
    options: {
      for: {
        value: 'FIGURE=VALUE',
        required: true,
        says: 'clearance=0.2, frontFace=0, visibleMargin=30, deepestInsertion=11, bottomGap=2, season.dampest.bottomGap=1, ...; lengths as in a job',
      },
      by: {
        value: 'SIZE',
        required: true,
        says: 'a cut by its name, "back relief.depth" or "raise.reach", or panel.thickness, frame.swellGap, frame.groove.width, ...',
      },
      json: { says: 'print the report with the answer in it as JSON' },
      write: { says: 'put the setting into the job file; its comments stay as they are' },
      shop: SHOP,
    },
    statuses: ['a setting was found', 'there is none', 'wrong use or a file could not be read or written'],
  },
  async ({ path, values }, io) => {
    const shop = await openShop(values.shop, io);
    return shop === null ? 2 : solveFile(path, shop, values, io);
  },
);

async function solveFile(
  path: string,
  shop: ReadOptions['shop'],
  values: { for: string; by: string; json: boolean; write: boolean },
  io: Io,
): Promise<number> {
  const text = readText(path);
  const job = await readOneJob({ path, text }, shop, io);
  if (job === null) return 2;

  const wanted = readWanted(values.for, values.by, job.units);
  const solved = askFor(() => solveJob(job, wanted));
  if (values.write && solved.setting !== null) {
    const done = await writeSetting(path, text as string, solved, job.units, io);
    if (!done) return 2;
  }
  const written = values.write && solved.writes.length > 0;
  const paint = painter(io.colour);
  await io.out(
    values.json
      ? `${JSON.stringify({ ...evaluate(job), solved }, null, 2)}\n`
      : solvedReport(solved, job.units, written ? path : null, paint),
  );
  return solved.setting === null ? 1 : 0;
}

/** `clearance=0.2` as a figure and its value in mm; a bare number is in the job's own unit. */
function readWanted(asked: string, by: string, units: 'mm' | 'in'): Wanted {
  const at = asked.indexOf('=');
  if (at < 1) throw new UsageError(`--for ${asked} has no value. Write it as --for clearance=0.2.`);
  const length = parseLength(asked.slice(at + 1), units);
  if ('read' in length) {
    throw new UsageError(`--for ${asked}: the value is ${length.read}. Write ${length.instead}.`);
  }
  return { for: asked.slice(0, at).trim(), value: length.mm, by };
}

/** A name that the job does not have is a wrong use of the command, said as the core says it. */
function askFor(answer: () => Solved): Solved {
  try {
    return answer();
  } catch (error) {
    if (error instanceof RangeError) {
      const stop = error.message.endsWith('?') ? '' : '.';
      throw new UsageError(`${error.message}${stop} See fielded help solve.`);
    }
    throw error;
  }
}

async function writeSetting(path: string, text: string, solved: Solved, units: 'mm' | 'in', io: Io): Promise<boolean> {
  const written = writeValues(text, solved.writes, units);
  if ('refused' in written) {
    await io.err(`${safe(path)}  ${safe(written.refused)}\n`);
    return false;
  }
  const refusal = written.text === text ? null : writeWhole(path, written.text);
  if (refusal === null) return true;
  await io.err(refusalLine(path, refusal));
  return false;
}
