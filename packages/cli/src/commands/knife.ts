import { extname } from 'node:path';
import { findNearest, type KnifeReport, toMillimetres } from '@fielded/core';
import { readReportPath } from '@fielded/geometry';
import { readArguments, UsageError } from '../arguments.ts';
import { type Io, safe } from '../io.ts';
import { listProblems } from '../report/list-problems.ts';
import { WIDTH } from '../report/plain-report.ts';
import { deliver } from './deliver.ts';
import { openShop } from './read-jobs.ts';
import { type KnifeFile, openKnives } from './read-knives.ts';

const OPTIONS = {
  name: { type: 'string' },
  part: { type: 'string' },
  output: { type: 'string', short: 'o' },
  shop: { type: 'string' },
  force: { type: 'boolean' },
} as const;

const PARTS = ['knife', 'limiter'] as const;
type Part = (typeof PARTS)[number];

const FORMATS = ['.svg', '.dxf', '.csv'] as const;
type Format = (typeof FORMATS)[number];

/** `fielded knife`: what to grind for one cut of a job or one knife of a shop, as a drawing, for a machine or as ordinates. */
export async function knife(argv: readonly string[], io: Io): Promise<number> {
  const { values, positionals } = readArguments(argv, OPTIONS, 'knife');
  const [path, ...more] = positionals;
  if (path === undefined) throw new UsageError('knife needs a job or a shop file. See fielded help knife.');
  if (more.length > 0) throw new UsageError('knife takes one file at a time. See fielded help knife.');
  const part = readPart(values.part);
  const format = readFormat(values.output);
  const shop = await openShop(values.shop as string | undefined, io);
  if (shop === null) return 2;
  const asked = values.name as string | undefined;
  const file = await openKnives(path, shop, asked, io);
  if (file === null) return 2;
  const chosen = choose(file, asked);
  if (typeof chosen === 'string') {
    await io.err(`${safe(`${path}  ${chosen}`)}\n`);
    return 1;
  }
  if (part === 'limiter' && chosen.limiter === null) {
    await io.err(`${listProblems(chosen.warnings, WIDTH, (text) => text).join('\n')}\n`);
    return 1;
  }
  const written = await write(file, chosen, part, format);
  if (!(await deliver(io, values.output as string | undefined, written, values.force === true))) return 2;
  if (chosen.warnings.length > 0) await io.err(`${listProblems(chosen.warnings, WIDTH, (text) => text).join('\n')}\n`);
  return chosen.warnings.some((problem) => problem.severity === 'error') ? 1 : 0;
}

/** The knife asked for by the name of its cut or its own; the only one there is; or why there is none. */
function choose(file: KnifeFile, asked: string | undefined): KnifeReport | string {
  const { knives, names, kind } = file;
  const known = [...names.keys()];
  const what = kind === 'job' ? 'cut' : 'knife';
  if (known.length === 0) return 'The file has no knives. Add one under knives.';
  if (asked === undefined) {
    const [only, another] = knives;
    if (only && !another) return only;
    if (only)
      throw new UsageError(`There are several: say which with --name. There are ${list(knives.map((k) => k.cut))}.`);
    return [...names.values()].find((why) => why !== null)!;
  }
  const found = knives.find((k) => k.cut === asked) ?? knives.find((k) => k.knife === asked);
  if (found) return found;
  const why = names.get(asked);
  if (why) return why;
  const near = findNearest(asked, known);
  throw new UsageError(
    `--name ${asked}: there is no such ${what}. ${near ? `Did you mean ${near}? ` : ''}There are ${list(known)}.`,
  );
}

function list(names: readonly string[]): string {
  return names.length < 2 ? names.join() : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

function readPart(given: string | boolean | undefined): Part {
  if (given === undefined) return 'knife';
  const part = PARTS.find((name) => name === given);
  if (part !== undefined) return part;
  const near = findNearest(String(given), PARTS);
  throw new UsageError(
    `--part ${given} is not known. ${near ? `Did you mean ${near}? ` : ''}There are knife and limiter.`,
  );
}

function readFormat(output: string | boolean | undefined): Format {
  if (typeof output !== 'string') return '.svg';
  const ending = extname(output).toLowerCase();
  const format = FORMATS.find((known) => known === ending);
  if (format !== undefined) return format;
  throw new UsageError(`${output} does not say what to write: end the name in .svg, .dxf or .csv.`);
}

/** Drawing and exchange are loaded only when they are needed. */
async function write(file: KnifeFile, knife: KnifeReport, part: Part, format: Format): Promise<string> {
  const { units, title } = file;
  if (format === '.svg') return (await import('@fielded/render')).drawKnife({ knife, units, title, part });
  const exchange = await import('@fielded/exchange');
  const limiter = knife.limiter;
  const { outline, ordinates } = part === 'limiter' && limiter !== null ? limiter : knife;
  if (format === '.csv') {
    const inUnit = (mm: number) => mm / toMillimetres(1, units);
    return exchange.writeCsv({
      headings: [`s (${units})`, `t (${units})`],
      rows: ordinates.map(({ s, t }) => [inUnit(s), inUnit(t)]),
    });
  }
  return exchange.writeDxf([{ name: part.toUpperCase(), chains: readReportPath(outline) }]);
}
