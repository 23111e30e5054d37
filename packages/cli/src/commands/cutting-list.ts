import {
  assumedRules,
  type CuttingList,
  evaluate,
  type Job,
  makeCuttingList,
  ONE_JOINT,
  parseLength,
  type ReadOptions,
  type Report,
  type Voice,
} from '@fielded/core';
import type { OfficePaper } from '@fielded/render';
import { type Command, defineCommand } from '../command.ts';
import { findJobs } from '../files/find-jobs.ts';
import { cuttingCsv } from '../formats/cutting-csv.ts';
import { type Io, safe } from '../io.ts';
import { cuttingLines } from '../report/cutting-lines.ts';
import { jsonText } from '../report/json-text.ts';
import { remarkProblems } from '../report/list-problems.ts';
import { painter } from '../terminal/paint.ts';
import { UsageError, unsaid } from '../usage-error.ts';
import { say, voiceOf } from '../words/say.ts';
import { deliver } from './deliver.ts';
import { exitStatus, openShop, readOneJob } from './read-jobs.ts';
import { checkPaper, FILE_ENDINGS, FORCE, LANGUAGE, output, PAPER, SHOP } from './shared-options.ts';
import { withinRoom } from './within-room.ts';

type Format = '.csv' | '.pdf';

/** `fielded cutting-list`: what to saw for one job or several, as a table, a spreadsheet, sheets for the shop, or labels. */
export const cuttingList: Command = defineCommand(
  {
    summary: 'list what to saw: frames, panels, blanks, timber; labels',
    place: {
      name: 'JOB',
      least: 1,
      most: Number.POSITIVE_INFINITY,
      needs: 'a job file with doors, or a folder of them',
      endings: FILE_ENDINGS,
    },
    about: [
      'Lists everything the doors of a job are made of: parts of the frames, panels, the blanks that narrow panels ride in with their rips, and the timber to order. Several jobs are added up; equal sizes are counted together.',
    ],
    options: {
      output: output(
        'by its ending: .csv for a spreadsheet, .pdf sheets for the saw and the moulder, every panel drawn with its number and every door from the front; without it, tables go to standard output',
      ),
      labels: {
        value: 'SIZE',
        says: 'labels for all parts and panels instead (.pdf): 65 for 65 to an A4 sheet, or a size such as 70x36 in mm',
      },
      doors: { says: 'only the doors from the front with their sizes, nine to a sheet (.pdf)' },
      outlines: { says: "draw the labels' edges, for plain paper" },
      paper: PAPER,
      json: { says: 'print the list as JSON, lengths in mm at full precision' },
      shop: SHOP,
      language: LANGUAGE,
      force: FORCE,
    },
    formats: ['.csv', '.pdf'],
    statuses: ['written', 'a job has an error', 'one could not be read'],
  },
  async ({ paths, values, format }, io) => {
    const shop = await openShop(values.shop, io);
    return shop === null ? 2 : listJobs(paths, shop, values, format, io);
  },
);

interface Asked {
  readonly output: string | undefined;
  readonly labels: string | undefined;
  readonly outlines: boolean;
  readonly doors: boolean;
  readonly paper: OfficePaper | undefined;
  readonly json: boolean;
  readonly force: boolean;
}

async function listJobs(
  paths: readonly string[],
  shop: ReadOptions['shop'],
  asked: Asked,
  format: Format,
  io: Io,
): Promise<number> {
  checkAsked(asked, format);
  const jobs: Job[] = [];
  for (const text of paths.flatMap((path) => findJobs(path).jobs)) {
    const job = await readOneJob(text, shop, io);
    if (job === null) return 2;
    jobs.push(job);
  }
  // Only jobs with doors give a list.
  const withDoors = jobs.filter(({ doors }) => doors.length > 0);
  if (withDoors.length === 0) {
    await io.err(`${safe(paths.join(', '))}  ${say('print.no-doors', {}, voiceOf(io))}\n`);
    return 1;
  }
  const reports = withDoors.map((job) => evaluate(job, { simulation: ONE_JOINT }));
  const list = makeCuttingList(reports);
  const units = reports[0]!.units;
  const written = await write(list, reports, assumedRules(withDoors, units), asked, format, io);
  if (!(await deliver(io, asked.output, written, asked.force))) return 2;
  const problems = reports.flatMap((report) => report.problems);
  await io.err(remarkProblems(problems, voiceOf(io)));
  return Math.max(...reports.map(exitStatus));
}

function checkAsked({ output, labels, outlines, doors, paper, json }: Asked, format: Format): void {
  checkPaper(paper, output !== undefined && format === '.pdf' && labels === undefined, ['.pdf']);
  if (doors && (output === undefined || format !== '.pdf' || labels !== undefined))
    throw new UsageError(unsaid('print.usage.doors-alone', {}));
  if (json && (output !== undefined || labels !== undefined))
    throw new UsageError(unsaid('print.usage.json-by-itself', {}));
  if (labels !== undefined && (output === undefined || format !== '.pdf'))
    throw new UsageError(unsaid('print.usage.labels-pdf', {}));
  if (outlines && labels === undefined) throw new UsageError(unsaid('print.usage.outlines-of-labels', {}));
}

async function write(
  list: CuttingList,
  reports: readonly Report[],
  assumed: readonly string[],
  asked: Asked,
  format: Format,
  io: Io,
): Promise<string | Uint8Array> {
  const units = reports[0]!.units;
  const voice = { ...voiceOf(io), units };
  const problems = reports.flatMap((report) => report.problems);
  const errors = problems.filter(({ severity }) => severity === 'error').map(({ message }) => message);
  if (asked.json) return jsonText({ fielded: 1, ...list, assumed, problems });
  if (asked.output === undefined) return cuttingLines(list, voice, { assumed, errors }, painter(io.colour));
  if (format === '.csv') return cuttingCsv(list, voice, { assumed, errors });
  const render = await import('@fielded/render');
  const { writePdf } = await import('../formats/pdf.ts');
  if (asked.doors) return writePdf(reports.flatMap((report) => render.doorSchedule(report, asked.paper)));
  if (asked.labels !== undefined)
    return writePdf(
      drawLabels(list, { units, ...(io.language && { language: io.language }) }, asked.labels, asked.outlines, render),
    );
  const sheets = withinRoom('-o', unsaid('print.usage.fewer-jobs.csv', {}), () =>
    render.cuttingSheets(list, { reports, assumed, ...(asked.paper && { paper: asked.paper }) }),
  );
  return writePdf(sheets);
}

/** Label sheets; more labels than are drawn are refused with their number. */
function drawLabels(
  list: CuttingList,
  { units, language }: Pick<Voice, 'units' | 'language'>,
  size: string,
  outlines: boolean,
  render: typeof import('@fielded/render'),
) {
  const sheet = labelsOf(size, render);
  return withinRoom('--labels', unsaid('print.usage.fewer-jobs', {}), () =>
    render.labelSheets(list, units, sheet, outlines, language),
  );
}

/** The label sheet asked for: 65 to a sheet, or as many of a size as fit. */
function labelsOf(asked: string, { labelSheet, SIXTY_FIVE }: typeof import('@fielded/render')) {
  if (asked === '65') return SIXTY_FIVE;
  const [width, height, more] = asked.split(/[x×]/).map((text) => parseLength(text.trim(), 'mm'));
  const sheet =
    width && height && more === undefined && 'mm' in width && 'mm' in height
      ? labelSheet(width.mm, height.mm)
      : undefined;
  if (sheet === undefined || (sheet !== null && Math.min(sheet.label.width, sheet.label.height) < 8))
    throw new UsageError(unsaid('print.usage.labels-size', { size: asked }));
  if (sheet === null) throw new UsageError(unsaid('print.usage.labels-too-large', { size: asked }));
  return sheet;
}
