import { OUTLINE_VIEWS, type PlainView, VIEW_WORDS } from '@fielded/render';
import { type Command, defineCommand, type Given, type Option } from '../command.ts';
import { type Unsaid, UsageError, unsaid } from '../usage-error.ts';
import { type Chart, isChart } from './draw-charts.ts';
import { type DrawFormat, type DrawRequest, drawJob, LEAST_DPI } from './draw-job.ts';
import { FILE_ENDINGS, FORCE, LANGUAGE, output, SHOP } from './shared-options.ts';

const PAPER_NAMES = ['a4', 'letter', 'a3', 'tabloid'] as const;

/** Everything that can be drawn, and what it shows: the drawings' own list, sheets and charts. */
const VIEWS: Readonly<Record<PlainView | 'sheet' | Chart, string>> = {
  ...VIEW_WORDS,
  sheet: 'all that a bench needs, on sheets with a title block',
  spread: "chart of a job's spread",
  season: "chart of a job's seasons",
};

const OPTIONS = {
  view: { value: 'VIEW', says: 'what is drawn: the joint, if not said', choices: VIEWS },
  output: output(
    'by its ending: .svg, .pdf, .png, .html to put into a page or a quote, or .dxf: outlines at 1:1 on named layers of section, joint, cuts and panel. Folders are made if need be; written whole or not at all. Without it, SVG goes to standard output',
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
  width: {
    value: 'MM',
    whole: [40, 2000],
    says: 'how wide the drawing is, to suit a document: the largest standard scale that fits',
  },
  'check-bar': { says: 'a bar under the drawing to check a print with a rule; sheets always have one' },
  door: { value: 'NAME', says: 'which door; if not said, the first, and on paper all' },
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
  dpi: { value: 'N', whole: [LEAST_DPI, 1200], says: 'how fine a .png is: 200 if not said' },
  shop: SHOP,
  language: LANGUAGE,
  force: FORCE,
  paper: {
    value: 'SIZE',
    heading: 'On paper, with a title block and a bar to check the print with a rule:',
    says: 'a4, letter, a3 or tabloid',
    choices: PAPER_NAMES,
  },
  landscape: { says: 'lays it across' },
  sheet: { value: 'N', whole: [1, 9999], says: 'only that sheet; a .pdf or .html holds them all' },
  date: { value: 'WORDS', says: 'as it shall stand in the title block' },
  'drawn-by': { value: 'NAME', says: 'as it shall stand in the title block' },
  number: { value: 'WORDS', says: "the drawing's number" },
  revision: { value: 'WORDS', says: "the drawing's revision" },
  material: { value: 'WORDS', says: "the wood; the season's, if not said" },
} as const satisfies Readonly<Record<string, Option>>;

const FORMATS = ['.svg', '.pdf', '.png', '.html', '.dxf'] as const;
const ON_SHEETS = ['landscape', 'sheet', 'date', 'drawn-by', 'number', 'revision', 'material'] as const;
const OFF_SHEETS = ['width', 'check-bar'] as const;
const ONLY_OF_WOOD = ['paper', 'scale', 'units', 'door', 'bare', 'width', 'check-bar'] as const;
const NOT_IN_DXF = ['paper', 'scale', 'units', 'bare', 'width', 'check-bar'] as const;

/** `fielded draw`: a drawing of one job, to a file or as SVG to standard output; its problems on standard error. */
export const draw: Command = defineCommand(
  {
    summary: 'draw joint, cuts, doors, sheets: SVG, PDF, PNG, HTML, DXF',
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
  checkAgainstView(values, view, paper !== null);
  checkAgainstFormat(values, view, format);
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
    width: values.width,
    checkBar: values['check-bar'],
    fields: {
      date: values.date ?? '',
      drawnBy: values['drawn-by'] ?? '',
      number: values.number ?? '',
      revision: values.revision ?? '',
      ...(values.material !== undefined && { material: values.material }),
    },
    theme: values.theme ?? 'print',
    bare: values.bare,
    outlines: values.text === 'outlines',
    font: values.font,
    dpi: values.dpi ?? 200,
    force: values.force,
  };
}

type DrawValues = Given<typeof OPTIONS, DrawFormat>['values'];
type View = keyof typeof VIEWS;

/** Refuses options that do not apply to the view or to paper. */
function checkAgainstView(values: DrawValues, view: View, onPaper: boolean): void {
  if (isChart(view)) refuse(values, ONLY_OF_WOOD, (option) => unsaid('print.usage.of-wood', { option, view }));
  if (onPaper) refuse(values, OFF_SHEETS, (option) => unsaid('print.usage.off-paper', { option }));
  else refuse(values, ON_SHEETS, (option) => unsaid('print.usage.on-paper', { option }));
}

/** Refuses options that do not apply to the kind of file. */
function checkAgainstFormat(values: DrawValues, view: View, format: DrawFormat): void {
  if (format === '.dxf') {
    if (!OUTLINE_VIEWS.some((known) => known === view))
      throw new UsageError(unsaid('print.usage.dxf-views', { views: OUTLINE_VIEWS.join(', ') }));
    refuse(values, NOT_IN_DXF, (option) => unsaid('print.usage.with-figures', { option }));
  }
  if (values.theme !== undefined && format === '.pdf') throw new UsageError(unsaid('print.usage.theme', {}));
  if (values.text !== undefined && format !== '.svg') throw new UsageError(unsaid('print.usage.text', {}));
  if (values.font !== undefined && format !== '.pdf' && format !== '.png' && values.text !== 'outlines')
    throw new UsageError(unsaid('print.usage.font', {}));
  if (values.dpi !== undefined && format !== '.png') throw new UsageError(unsaid('print.usage.dpi', {}));
}

/** Refuses the first of `names` that was given; a switch that is off counts as not given. */
function refuse(values: DrawValues, names: readonly (keyof DrawValues)[], why: (option: string) => Unsaid): void {
  const given = names.find((name) => values[name] !== undefined && values[name] !== false);
  if (given !== undefined) throw new UsageError(why(given));
}

function readScale(given: string | undefined, onPaper: boolean): number | 'fit' | undefined {
  if (given === undefined) return undefined;
  if (given === 'fit') {
    if (onPaper) return 'fit';
    throw new UsageError(unsaid('print.usage.scale-fit', {}));
  }
  const [, paper, wood] = /^(\d{1,4}(?:\.\d+)?):(\d{1,4}(?:\.\d+)?)$/.exec(given) ?? [];
  const scale = Number(paper) / Number(wood);
  if (scale >= 0.01 && scale <= 50) return scale;
  throw new UsageError(unsaid('print.usage.scale', { scale: given }));
}
