import {
  evaluate,
  type Job,
  measureLength,
  type ReadOptions,
  type Solved,
  type SolvedByTwo,
  sayMisread,
  solveByTwo,
  solve as solveJob,
  UnknownName,
  type Wanted,
} from '@fielded/core';
import { type Command, defineCommand } from '../command.ts';
import { readTextFile } from '../files/read-text.ts';
import type { Io } from '../io.ts';
import { jsonText } from '../report/json-text.ts';
import { solvedReport } from '../report/solved-report.ts';
import { painter } from '../terminal/paint.ts';
import { inEnglish, seeHelp, type Unsaid, UsageError, unsaid } from '../usage-error.ts';
import { say } from '../words/say.ts';
import { openShop, readOneJob } from './read-jobs.ts';
import { FILE_ENDINGS, LANGUAGE, SHOP } from './shared-options.ts';
import { writeBack } from './write-back.ts';

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
      'With two sizes it finds the pair that moves least. --for face=flush sets a front and a back cut together, so that the faces come flush and the clearance is the one aimed at.',
    ],
    options: {
      for: {
        value: 'FIGURE=VALUE',
        required: true,
        says: 'clearance=0.2, face=flush, frontFace=0, visibleMargin=30, deepestInsertion=11, bottomGap=2, season.dampest.bottomGap=1, ...; lengths as in a job',
      },
      by: {
        value: 'SIZE',
        times: 2,
        says: 'a cut by its name, "back relief.depth" or "raise.reach", or panel.thickness, frame.swellGap, frame.groove.width, ...; given twice, both may change, as little as will do',
      },
      json: { says: 'print the report with the answer in it as JSON' },
      write: { says: 'put the setting into the job file; its comments stay as they are' },
      shop: SHOP,
      language: LANGUAGE,
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
  values: { for: string; by: readonly string[]; json: boolean; write: boolean },
  io: Io,
): Promise<number> {
  if (values.by.length === 0 && !/^face *=/.test(values.for)) throw noSize();
  const text = readTextFile(path);
  const job = await readOneJob({ path, text }, shop, io);
  if (job === null) return 2;

  const asked = readWanted(values.for, job.units);
  const by = values.by.length > 0 ? values.by : usualSizes(asked.for, job);
  const [first = '', second] = by;
  const solved = askFor(() =>
    second === undefined ? solveJob(job, { ...asked, by: first }) : solveByTwo(job, { ...asked, by: [first, second] }),
  );
  const found = solved.reason === null;
  if (values.write && found) {
    const done = await writeBack(path, text as string, solved.writes, job.units, shop, io);
    if (!done) return 2;
  }
  const written = values.write && solved.writes.length > 0;
  const paint = painter(io.colour);
  await io.out(
    values.json ? jsonText({ ...evaluate(job), solved }) : solvedReport(solved, job, written ? path : null, paint),
  );
  return found ? 0 : 1;
}

function noSize(): UsageError {
  return new UsageError(unsaid('print.usage.solve', {}), seeHelp('solve'));
}

/** The sizes that may change where none is named: for a flush face, the depth of a front and of a back cut. */
function usualSizes(figure: string, job: Job): string[] {
  const front = job.cuts.find(({ side }) => side === 'front');
  const back = job.cuts.find(({ side }) => side === 'back');
  if (figure === 'face' && front && back) return [`${front.name}.depth`, `${back.name}.depth`];
  throw noSize();
}

/** `clearance=0.2` as a figure and its value in mm; a bare number is in the job's own unit. */
function readWanted(asked: string, units: 'mm' | 'in'): Pick<Wanted, 'for' | 'value'> {
  const at = asked.indexOf('=');
  if (at < 1) throw new UsageError(unsaid('print.usage.for', { asked }));
  const name = asked.slice(0, at).trim();
  if (asked.slice(at + 1).trim() === 'flush' && /face$/i.test(name)) return { for: name, value: 0 };
  const length = measureLength(asked.slice(at + 1), units);
  if ('read' in length) {
    throw new UsageError((voice) => say('print.usage.for-length', { asked, ...sayMisread(length, voice) }, voice));
  }
  return { for: name, value: length.mm };
}

/** Turns the engine's RangeError for a name that the job does not have into wrong use, in the same words. */
function askFor<S extends Solved | SolvedByTwo>(answer: () => S): S {
  try {
    return answer();
  } catch (error) {
    if (error instanceof UnknownName) throw new UsageError(unknownWords(error), seeHelp('solve'));
    if (error instanceof RangeError) throw new UsageError(inEnglish(`${error.message}.`), seeHelp('solve'));
    throw error;
  }
}

function unknownWords({ kind, asked, near, known }: UnknownName): Unsaid {
  return near === undefined
    ? unsaid(`print.usage.unknown-${kind}`, { name: asked, known: known.join(', ') })
    : unsaid(`print.usage.unknown-${kind}.near`, { name: asked, near });
}
