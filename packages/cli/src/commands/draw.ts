import type { PlainView } from '@fielded/render';
import { UsageError } from '../arguments.ts';
import { type Command, defineCommand, type Given, type Option } from '../command.ts';
import { type Chart, isChart } from './draw-charts.ts';
import { type DrawFormat, type DrawRequest, drawJob } from './draw-job.ts';
import { FILE_ENDINGS, FORCE, output, SHOP } from './shared-options.ts';

const PAPER_NAMES = ['a4', 'letter', 'a3', 'tabloid'] as const;

/** Everything that can be drawn, and what it shows. The types of the drawings' own list make this one complete. */
const VIEWS: Readonly<Record<PlainView | 'sheet' | Chart, string>> = {
  joint: "the panel in the frame's groove; the default",
  section: "the panel's edge by itself",
  detail: 'tongue and groove enlarged, with what is free on all sides',
  cuts: 'what each cut takes, in running order, as the panel lies',
  panel: "the front of a door's panel",
  door: 'the front of a door',
  sheet: 'all that a bench needs, on sheets with a title block',
  spread: "chart of a job's spread",
  season: "chart of a job's seasons",
};

const OPTIONS = {
  view: { value: 'VIEW', says: '', choices: VIEWS },
  output: output(
    'by its ending: .svg, .pdf, .png, or .html to put into a page or a quote. Folders are made if need be; written whole or not at all. Without it, SVG goes to standard output',
  ),
  scale: {
    value: 'SCALE',
    says: '2:1 keeps to a scale: what is too wide is broken, not shrunk; fit takes the largest standard scale that fits the paper',
  },
  units: {
    value: 'UNITS',
    says: "mm, in or both: other units than the job's own; both puts the others under the line",
    choices: ['mm', 'in', 'both'],
  },
  door: { value: 'NAME', says: 'which door; the first, if not said' },
  bare: { says: 'only the drawing, nothing under it' },
  theme: {
    value: 'THEME',
    says: 'light or dark, for screens; without it, print: ink on white',
    choices: ['print', 'light', 'dark'],
  },
  text: {
    value: 'TEXT',
    says: 'outlines: letters as outlines, for office programs that lack the font (.svg); else live',
    choices: ['live', 'outlines'],
  },
  font: {
    value: 'FILE',
    says: "for letters that the shipped font lacks, before this machine's own fonts (.pdf, .png, outlines); letters that none has are named",
    endings: ['.ttf', '.otf'],
  },
  dpi: { value: 'N', whole: [36, 1200], says: 'how fine a .png is: 200 if not said' },
  shop: SHOP,
  force: FORCE,
  paper: {
    value: 'SIZE',
    heading: 'On paper, with a title block and a bar to check the print with a rule:',
    says: 'a4, letter, a3 or tabloid',
    choices: PAPER_NAMES,
  },
  landscape: { says: 'lays it across' },
  sheet: { value: 'N', whole: [1, 999], says: 'only that sheet; a .pdf or .html holds them all' },
  date: { value: 'WORDS', says: 'as it shall stand in the title block' },
  'drawn-by': { value: 'NAME', says: 'as it shall stand in the title block' },
} as const satisfies Readonly<Record<string, Option>>;

const FORMATS = ['.svg', '.pdf', '.png', '.html'] as const;

/** `fielded draw`: a drawing of one job, to a file or as SVG to standard output; its problems on standard error. */
export const draw: Command = defineCommand(
  {
    summary: 'draw joint, cuts, doors, sheets: SVG, PDF, PNG, HTML',
    place: {
      name: 'JOB',
      least: 1,
      most: 1,
      needs: 'a job file',
      takes: 'one job at a time',
      endings: FILE_ENDINGS,
    },
    about: [
      'Draws one job true to scale, with the dimensions that decide and the verdict in words. Problems found are listed on standard error; the drawing is made all the same.',
    ],
    options: OPTIONS,
    formats: FORMATS,
    statuses: ['drawn', 'drawn and the job has an error', 'nothing written'],
  },
  (given, io) => drawJob(readDrawRequest(given), io),
);

/** Reads the options of `fielded draw`. Throws `UsageError` for what contradicts something else. */
function readDrawRequest({ path, values, format }: Given<typeof OPTIONS, DrawFormat>): DrawRequest {
  const view = values.view ?? 'joint';
  const paper = values.paper ?? (view === 'sheet' ? 'a4' : null);
  if (isChart(view))
    for (const name of ['paper', 'scale', 'units', 'door', 'bare'] as const)
      if (values[name] !== undefined && values[name] !== false)
        throw new UsageError(`--${name} is for drawings of wood. Leave it out of --view ${view}.`);
  for (const name of ['landscape', 'sheet', 'date', 'drawn-by'] as const)
    if (values[name] !== undefined && values[name] !== false && paper === null)
      throw new UsageError(`--${name} is for drawings on paper. Add --paper, or take --view sheet.`);
  if (values.theme !== undefined && format === '.pdf')
    throw new UsageError('--theme is for screens: a PDF is always ink on white. Leave it out, or write an .svg.');
  if (values.text !== undefined && format !== '.svg')
    throw new UsageError('--text is for .svg: the other formats bring their letters with them. Leave it out.');
  if (values.font !== undefined && format !== '.pdf' && format !== '.png' && values.text !== 'outlines')
    throw new UsageError(
      "--font is for .pdf, .png and --text outlines: live letters are drawn in the reader's own fonts. Leave it out.",
    );
  if (values.dpi !== undefined && format !== '.png') throw new UsageError('--dpi is for .png. Leave it out.');
  return {
    path,
    shop: values.shop,
    output: values.output,
    format,
    view,
    door: values.door,
    scale: readScale(values.scale, paper !== null),
    units: values.units,
    paper,
    landscape: values.landscape,
    sheet: values.sheet,
    date: values.date ?? '',
    drawnBy: values['drawn-by'] ?? '',
    theme: values.theme ?? 'print',
    bare: values.bare,
    outlines: values.text === 'outlines',
    font: values.font,
    dpi: values.dpi ?? 200,
    force: values.force,
  };
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
