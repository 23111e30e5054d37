import { evaluate, parseLength, type Solved, solve as solveJob, type Wanted, writeValues } from '@fielded/core';
import { readArguments, UsageError } from '../arguments.ts';
import { readText } from '../files/read-text.ts';
import { writeWhole } from '../files/write-whole.ts';
import { type Io, safe } from '../io.ts';
import { refusalLine } from '../report/list-faults.ts';
import { solvedReport } from '../report/solved-report.ts';
import { painter } from '../terminal/paint.ts';
import { openShop, readOneJob } from './read-jobs.ts';

const OPTIONS = {
  for: { type: 'string' },
  by: { type: 'string' },
  json: { type: 'boolean' },
  write: { type: 'boolean' },
  shop: { type: 'string' },
} as const;

/**
 * `fielded solve`: the setting of one size that gives a wanted figure, to read, as JSON, or written into the job file.
 * Gives 0 where there is one, 1 where there is none, 2 for wrong use or a file that cannot be read or written.
 */
export async function solve(argv: readonly string[], io: Io): Promise<number> {
  const { values, positionals } = readArguments(argv, OPTIONS, 'solve');
  const [path, ...more] = positionals;
  if (path === undefined || more.length > 0) throw new UsageError('solve needs one job file. See fielded help solve.');
  if (typeof values.for !== 'string' || typeof values.by !== 'string')
    throw new UsageError('solve needs --for FIGURE=VALUE and --by SIZE. See fielded help solve.');
  const shop = await openShop(values.shop as string | undefined, io);
  if (shop === null) return 2;
  const text = readText(path);
  const job = await readOneJob({ path, text }, shop, io);
  if (job === null) return 2;

  const wanted = readWanted(values.for, values.by, job.units);
  const solved = askFor(() => solveJob(job, wanted));
  if (values.write === true && solved.setting !== null) {
    const done = await writeSetting(path, text as string, solved, job.units, io);
    if (!done) return 2;
  }
  const written = values.write === true && solved.writes.length > 0;
  const paint = painter(io.colour);
  await io.out(
    values.json === true
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
