import {
  findNearest,
  formatLength,
  type Job,
  type KnifeMatch,
  matchKnives,
  sweptOutline,
  verdictWord,
} from '@fielded/core';
import { type Command, defineCommand } from '../command.ts';
import { readTextFile } from '../files/read-text.ts';
import { type Io, safe } from '../io.ts';
import { sayFigure } from '../report/figures.ts';
import { jsonText } from '../report/json-text.ts';
import { didYouMean, thereAre, UsageError, unsaid } from '../usage-error.ts';
import { say } from '../words/say.ts';
import { deliver } from './deliver.ts';
import { openShop, readOneJob } from './read-jobs.ts';
import { FILE_ENDINGS, FORCE, JSON_OUT, LANGUAGE, output, SHOP } from './shared-options.ts';

/** How many are listed unless all are asked for. */
const SHOWN = 10;

interface Asked {
  readonly cut: string | undefined;
  readonly all: boolean;
  readonly json: boolean;
  readonly output: string | undefined;
  readonly force: boolean;
}

/** `fielded match`: which of the shop's knives could make a cut, at which setting, and what would be different. */
export const match: Command = defineCommand(
  {
    summary: "the shop's knives that could make a cut, nearest first",
    place: { name: 'JOB', least: 1, most: 1, needs: 'a job file', takes: 'one job at a time', endings: FILE_ENDINGS },
    about: [
      "Compares every knife of the shop with one cut of a job, at the cut's depth: the reach at which it comes nearest, how far off it then is, the fit it gives, and for the nearest whether its head and a machine can run it.",
    ],
    options: {
      cut: { value: 'NAME', says: 'which cut; needed where the job has several' },
      all: { says: 'list every knife, not only the nearest ten' },
      json: JSON_OUT,
      output: output('.svg or .pdf: the nearest knife drawn over the section wanted'),
      shop: SHOP,
      language: LANGUAGE,
      force: FORCE,
    },
    formats: ['.svg', '.pdf'],
    statuses: ['compared', 'the shop has no knife to compare', 'a file could not be read or written'],
  },
  async ({ path, values, format }, io) => {
    const shop = await openShop(values.shop, io);
    if (shop === null) return 2;
    const job = await readOneJob({ path, text: readTextFile(path) }, shop, io);
    return job === null ? 2 : matchFile(job, values, format, io);
  },
);

async function matchFile(job: Job, asked: Asked, format: '.svg' | '.pdf', io: Io): Promise<number> {
  const cut = chooseCut(job, asked.cut);
  const matches = matchKnives(job, cut.name);
  const [best] = matches;
  if (best === undefined) {
    await io.err(`${say('print.match.none', {}, job)}\n`);
    return 1;
  }
  await io.out(
    asked.json
      ? jsonText({ fielded: 1, title: job.title, cut: cut.name, matches })
      : listMatches(job, cut.name, asked.all ? matches : matches.slice(0, SHOWN), matches.length),
  );
  if (asked.output === undefined) return 0;
  const { matchScene, sceneToSvg } = await import('@fielded/render');
  const scene = matchScene({
    match: best,
    wanted: sweptOutline(cut),
    cut: cut.name,
    title: job.title,
    units: job.units,
    ...(job.language && { language: job.language }),
  });
  const written = format === '.svg' ? sceneToSvg(scene) : await (await import('../formats/pdf.ts')).writePdf([scene]);
  return (await deliver(io, asked.output, written, asked.force)) ? 0 : 2;
}

function chooseCut({ cuts }: Job, asked: string | undefined) {
  const names = cuts.map(({ name }) => name);
  if (asked === undefined) {
    if (cuts.length === 1) return cuts[0]!;
    throw new UsageError(unsaid('print.usage.several-cuts', {}), thereAre(names));
  }
  const found = cuts.find(({ name }) => name === asked);
  if (found) return found;
  const near = findNearest(asked, names);
  throw new UsageError(unsaid('print.usage.cut', { name: asked }), didYouMean(near), thereAre(names));
}

function listMatches(job: Job, cut: string, matches: readonly KnifeMatch[], of: number): string {
  const length = (mm: number) => sayFigure(formatLength(mm, job.units, 2), job.language);
  const lines = matches.map((match) => {
    const { knife, reach, deviation, problems } = match;
    const fit = match.fit === null ? say('print.match.no-tongue', {}, job) : verdictWord(match.fit, job);
    const figures = { knife, reach: length(reach), deviation: length(deviation), fit, runs: runWords(match, job) };
    return [
      `  ${say('print.match.knife', figures, job)}`,
      ...problems.map(({ message }) => `    ${safe(message)}`),
    ].join('\n');
  });
  const left = of - matches.length;
  return [
    say('print.match.head', { cut }, job),
    ...lines,
    ...(left > 0 ? [`  ${say('print.match.more', { count: left }, job)}`] : []),
    '',
  ].join('\n');
}

function runWords({ works, problems, head }: KnifeMatch, voice: Job): string {
  if (head === null) return say('print.match.no-head', {}, voice);
  if (works) return say('print.match.runs', { head }, voice);
  if (problems.length === 0) return say('print.match.not-worked-out', { head }, voice);
  return say('print.match.against', { head }, voice);
}
