import { extname } from 'node:path';
import { findNearest, type Report } from '@fielded/core';
import type { PaperName, PlainView, Theme, UnitsChoice } from '@fielded/render';
import { readArguments, UsageError } from '../arguments.ts';
import { CHARTS, type Chart, isChart } from './draw-charts.ts';

const OPTIONS = {
  view: { type: 'string' },
  output: { type: 'string', short: 'o' },
  shop: { type: 'string' },
  door: { type: 'string' },
  scale: { type: 'string' },
  units: { type: 'string' },
  paper: { type: 'string' },
  landscape: { type: 'boolean' },
  sheet: { type: 'string' },
  date: { type: 'string' },
  'drawn-by': { type: 'string' },
  theme: { type: 'string' },
  bare: { type: 'boolean' },
  text: { type: 'string' },
  font: { type: 'string' },
  dpi: { type: 'string' },
  force: { type: 'boolean' },
} as const;

const VIEWS = ['section', 'joint', 'detail', 'cuts', 'panel', 'door', 'sheet', ...CHARTS] as const;
const PAPER_NAMES = ['a4', 'letter', 'a3', 'tabloid'] as const;
const FORMATS = ['.svg', '.pdf', '.png', '.html'] as const;
const LEAST_DPI = 36;
const MOST_DPI = 1200;

type Format = (typeof FORMATS)[number];

/** What `fielded draw` was asked for. */
export interface DrawRequest {
  readonly path: string;
  readonly shop: string | undefined;
  readonly output: string | undefined;
  readonly format: Format;
  readonly view: PlainView | 'sheet' | Chart;
  readonly door: string | undefined;
  /** undefined: what suits the view. */
  readonly scale: number | 'fit' | undefined;
  readonly units: UnitsChoice | undefined;
  /** null: on paper just large enough. */
  readonly paper: PaperName | null;
  readonly landscape: boolean;
  /** Which sheet, from 1; undefined: the first, or all where the format holds several. */
  readonly sheet: number | undefined;
  readonly date: string;
  readonly drawnBy: string;
  readonly theme: Theme;
  readonly bare: boolean;
  readonly outlines: boolean;
  /** A font file for the letters that the shipped one lacks. */
  readonly font: string | undefined;
  readonly dpi: number;
  /** Whether a file that this tool did not write may be replaced. */
  readonly force: boolean;
}

/** Reads the options of `fielded draw`. Throws `UsageError` for what is unknown, and for what contradicts something else. */
export function readDrawRequest(argv: readonly string[]): DrawRequest {
  const { values, positionals } = readArguments(argv, OPTIONS, 'draw');
  const given = values as Readonly<Partial<Record<keyof typeof OPTIONS, string>>>;
  const [path, ...more] = positionals;
  if (path === undefined) throw new UsageError('draw needs a job file. See fielded help draw.');
  if (more.length > 0) throw new UsageError('draw takes one job at a time. See fielded help draw.');
  const view = readChoice('view', given.view, VIEWS) ?? 'joint';
  const paper = readChoice('paper', given.paper, PAPER_NAMES) ?? (view === 'sheet' ? 'a4' : null);
  const format = readFormat(given.output);
  if (isChart(view))
    for (const name of ['paper', 'scale', 'units', 'door', 'bare'] as const)
      if (values[name] !== undefined)
        throw new UsageError(`--${name} is for drawings of wood. Leave it out of --view ${view}.`);
  for (const name of ['landscape', 'sheet', 'date', 'drawn-by'] as const)
    if (values[name] !== undefined && paper === null)
      throw new UsageError(`--${name} is for drawings on paper. Add --paper, or take --view sheet.`);
  if (given.theme !== undefined && format === '.pdf')
    throw new UsageError('--theme is for screens: a PDF is always ink on white. Leave it out, or write an .svg.');
  if (given.text !== undefined && format !== '.svg')
    throw new UsageError('--text is for .svg: the other formats bring their letters with them. Leave it out.');
  if (given.font !== undefined && format !== '.pdf' && format !== '.png' && given.text !== 'outlines')
    throw new UsageError(
      "--font is for .pdf, .png and --text outlines: live letters are drawn in the reader's own fonts. Leave it out.",
    );
  if (given.dpi !== undefined && format !== '.png') throw new UsageError('--dpi is for .png. Leave it out.');
  return {
    path,
    shop: given.shop,
    output: given.output,
    format,
    view,
    door: given.door,
    scale: readScale(given.scale, paper !== null),
    units: readChoice('units', given.units, ['mm', 'in', 'both'] as const),
    paper,
    landscape: values.landscape === true,
    sheet: readWhole('sheet', given.sheet, 1, 999),
    date: given.date ?? '',
    drawnBy: given['drawn-by'] ?? '',
    theme: readChoice('theme', given.theme, ['print', 'light', 'dark'] as const) ?? 'print',
    bare: values.bare === true,
    outlines: readChoice('text', given.text, ['live', 'outlines'] as const) === 'outlines',
    font: given.font,
    dpi: readWhole('dpi', given.dpi, LEAST_DPI, MOST_DPI) ?? 200,
    force: values.force === true,
  };
}

/** The number of the door asked for by name, from 0; the first where none is. */
export function findDoor({ doors = [] }: Report, { door, view }: DrawRequest): number {
  if ((view === 'door' || view === 'panel') && doors.length === 0)
    throw new UsageError(`--view ${view} needs a door, and the job has none. Add it under doors, with its sizes.`);
  if (door === undefined) return 0;
  const index = doors.findIndex(({ name }) => name === door);
  if (index >= 0) return index;
  const names = doors.map(({ name }) => name);
  const near = findNearest(door, names);
  const known = names.length === 0 ? 'The job has none.' : `There are ${names.slice(0, 12).join(', ')}.`;
  throw new UsageError(`--door ${door}: there is no such door. ${near ? `Did you mean ${near}? ` : ''}${known}`);
}

function readChoice<T extends string>(name: string, given: string | undefined, known: readonly T[]): T | undefined {
  if (given === undefined) return undefined;
  const found = known.find((choice) => choice === given);
  if (found !== undefined) return found;
  const near = findNearest(given, known);
  const list = `${known.slice(0, -1).join(', ')} and ${known.at(-1)}`;
  throw new UsageError(`--${name} ${given} is not known. ${near ? `Did you mean ${near}? ` : ''}There are ${list}.`);
}

function readFormat(output: string | undefined): Format {
  if (output === undefined) return '.svg';
  const ending = extname(output).toLowerCase();
  const format = FORMATS.find((known) => known === ending);
  if (format !== undefined) return format;
  throw new UsageError(`${output} does not say what to write: end the name in .svg, .pdf, .png or .html.`);
}

function readScale(given: string | undefined, onPaper: boolean): number | 'fit' | undefined {
  if (given === undefined) return undefined;
  if (given === 'fit') {
    if (onPaper) return 'fit';
    throw new UsageError('--scale fit needs paper to fit. Add --paper, or give a scale such as 2:1.');
  }
  const [, paper, wood] = /^(\d{1,4}(?:\.\d+)?):(\d{1,4}(?:\.\d+)?)$/.exec(given) ?? [];
  const scale = Number(paper) / Number(wood);
  if (scale >= 0.01 && scale <= 50) return scale;
  throw new UsageError(`--scale ${given} is no scale. Write 1:1, 2:1, 1:5, or fit; from 1:100 to 50:1.`);
}

function readWhole(name: string, given: string | undefined, least: number, most: number): number | undefined {
  if (given === undefined) return undefined;
  const number = Number(given);
  if (/^\d+$/.test(given) && number >= least && number <= most) return number;
  throw new UsageError(`--${name} ${given}: write a whole number from ${least} to ${most}.`);
}
