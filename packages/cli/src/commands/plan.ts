import {
  evaluateWithPlan,
  type FileWord,
  findNearest,
  type Job,
  listPlanProblems,
  ONE_JOINT,
  type Planned,
  type ReadOptions,
  type Report,
} from '@fielded/core';
import type { OfficePaper } from '@fielded/render';
import { type Command, defineCommand } from '../command.ts';
import { readTextFile } from '../files/read-text.ts';
import type { Io } from '../io.ts';
import { jsonText } from '../report/json-text.ts';
import { remarkProblems } from '../report/list-problems.ts';
import { planReport } from '../report/plan-report.ts';
import { painter } from '../terminal/paint.ts';
import { didYouMean, listed, type Unsaid, UsageError, unsaid } from '../usage-error.ts';
import { say, voiceOf } from '../words/say.ts';
import { deliver } from './deliver.ts';
import { openShop, readOneJob } from './read-jobs.ts';
import { checkPaper, FILE_ENDINGS, FORCE, LANGUAGE, output, PAPER, SHOP } from './shared-options.ts';
import { writeBack } from './write-back.ts';

type Format = '.pdf' | '.html' | '.svg';

/** `fielded plan`: the set-up of every cut and the order of work, to read, as JSON, or as sheets for the machine. */
export const plan: Command = defineCommand(
  {
    summary: 'set-ups and the order of work: heights, fence, speed, feed',
    place: { name: 'JOB', least: 1, most: 1, needs: 'a job file', takes: 'one job at a time', endings: FILE_ENDINGS },
    about: [
      'Plans how a job is run in its shop: for each cut the machine, which way up and round, how high, how far out, how fast, in how many passes; then the order of work with the fewest set-ups. Says why other ways do not work, and what it could not check.',
      "It helps to set up and replaces nothing: the marks on the tool, the machine's manual, local rules and trained practice go before it.",
    ],
    options: {
      all: { says: 'list every way of making each cut, and what stands against it' },
      json: { says: 'print the plan as JSON, lengths in mm at full precision' },
      output: output(
        'by its ending: .pdf or .html with the order of work and a sheet for every set-up, or .svg with one of these sheets; without it, the plan goes to standard output',
      ),
      sheet: { value: 'N', whole: [1, 999], says: 'which sheet an .svg holds: 1, if not said, is the order of work' },
      paper: PAPER,
      machine: { value: 'NAME', says: 'plan with that machine of the shop alone' },
      write: { says: 'put a run that the plan proposes into the job file; its comments stay as they are' },
      shop: SHOP,
      language: LANGUAGE,
      force: FORCE,
    },
    formats: ['.pdf', '.html', '.svg'],
    statuses: ['planned', 'a cut cannot be run', 'a file could not be read or written'],
  },
  async ({ path, values, format }, io) => {
    const shop = await openShop(values.shop, io);
    return shop === null ? 2 : planFile(path, shop, { ...values, format }, io);
  },
);

interface PlanOptions {
  readonly all: boolean;
  readonly json: boolean;
  readonly write: boolean;
  readonly machine: string | undefined;
  readonly output: string | undefined;
  readonly sheet: number | undefined;
  readonly paper: OfficePaper | undefined;
  readonly force: boolean;
  readonly format: Format;
}

async function planFile(path: string, shop: ReadOptions['shop'], options: PlanOptions, io: Io): Promise<number> {
  checkOptions(options);
  const text = readTextFile(path);
  const read = await readOneJob({ path, text }, shop, io);
  if (read === null) return 2;
  const job = options.machine === undefined ? read : onMachine(read, options.machine);
  const { planned: made, report } = evaluateWithPlan(job, { simulation: ONE_JOINT });
  if (made === undefined) throw new UsageError(whyNoPlan(job));
  // A knife that rubs stands against running as a machine does that is too small.
  const planned = { ...made, problems: listPlanProblems(made, report) };
  if (options.write && !(await writeBack(path, text as string, proposedRuns(planned), job.units, shop, io))) return 2;
  if (options.output === undefined) {
    const paint = painter(io.colour);
    const words = options.json ? toJson(job, planned) : planReport(planned, report, path, options.all, paint);
    await io.out(words);
  } else {
    const written = await writeSheets(planned, report, options, io);
    if (!(await deliver(io, options.output, written, options.force))) return 2;
    await io.err(remarkProblems(planned.problems, voiceOf(io)));
  }
  return planned.problems.some(({ severity }) => severity === 'error') ? 1 : 0;
}

/** Refuses options that exclude each other. */
function checkOptions({ output, sheet, paper, json, all, format }: PlanOptions): void {
  checkPaper(paper, output !== undefined, ['.pdf', '.html', '.svg']);
  if (output !== undefined && (json || all))
    throw new UsageError(unsaid(json ? 'print.usage.json-alone' : 'print.usage.all-alone', {}));
  if (sheet !== undefined && (output === undefined || format !== '.svg'))
    throw new UsageError(unsaid('print.usage.sheet-in-svg', {}));
}

/** The sheets as a file; what draws is loaded only here. */
async function writeSheets(
  planned: Planned,
  report: Report,
  { format, sheet, paper }: PlanOptions,
  io: Io,
): Promise<string | Uint8Array> {
  const { planSheets, scenesToHtml, sceneToSvg } = await import('@fielded/render');
  const scenes = planSheets(planned, report, paper);
  if (format === '.pdf') return (await import('../formats/pdf.ts')).writePdf(scenes);
  if (format === '.html') return scenesToHtml(scenes, { fillsPaper: true });
  const chosen = scenes[(sheet ?? 1) - 1];
  if (chosen === undefined)
    throw new UsageError(unsaid('print.usage.sheet', { sheet: String(sheet), count: scenes.length }));
  if (sheet === undefined && scenes.length > 1)
    await io.err(`${say('print.first-plan-sheet', { count: scenes.length }, voiceOf(io))}\n`);
  return sceneToSvg(chosen);
}

function toJson({ title }: Job, { plan, problems }: Planned): string {
  return jsonText({ fielded: 1, title, plan, problems });
}

/** The job in a shop with one of its machines alone. */
function onMachine(job: Job, name: string): Job {
  const machines = job.shop?.machines ?? {};
  const names = Object.keys(machines);
  if (job.shop !== undefined && Object.hasOwn(machines, name))
    return { ...job, shop: { ...job.shop, machines: { [name]: machines[name]! } } };
  if (names.length === 0) throw new UsageError(whyNoPlan(job));
  const near = findNearest(name, names);
  throw new UsageError(
    unsaid('print.usage.machine', { name }),
    didYouMean(near),
    unsaid('print.usage.machines', { names: listed(names, 'and') }),
  );
}

/** What a job lacks to be planned, and what to write. */
function whyNoPlan({ shop, cuts }: Job): Unsaid {
  if (shop === undefined) return unsaid('print.no-shop', {});
  if (Object.keys(shop.machines).length === 0) return unsaid('print.no-machine', {});
  const [first] = cuts;
  return first === undefined ? unsaid('print.no-head.no-cut', {}) : unsaid('print.no-head', { cut: first.name });
}

/** The runs that the plan proposes, as words to write into the job file. */
function proposedRuns({ problems }: Planned): FileWord[] {
  const writes = problems.flatMap(({ advice = [] }) => advice.flatMap((each) => each.writes));
  return writes.filter((write): write is FileWord => 'word' in write && write.path.at(-1) === 'run');
}
