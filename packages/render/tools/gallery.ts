/**
 * Makes docs/drawings.md and the drawings it shows from the examples.
 *
 *   npm run drawings
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { evaluate, type Report, readJob } from '@fielded/core';
import { draw, type PlainView, sceneToSvg, sheets } from '@fielded/render';

const ROOT = join(import.meta.dirname, '../../..');
const IMAGES = 'docs/images/drawings';

function reportOn(example: string): Report {
  const { job } = readJob(readFileSync(join(ROOT, 'examples', example, 'job.yaml'), 'utf8'));
  if (job === null) throw new Error(`examples/${example} cannot be read`);
  return evaluate(job);
}

/** One picture of the gallery: the command that makes it, and what there is to see. */
interface Picture {
  readonly example: string;
  readonly view: PlainView | 'sheet';
  readonly words: string;
  /** Which of several sheets, from 1. */
  readonly sheet?: number;
  /** As wide as this, mm, with a check bar. */
  readonly width?: number;
}

const PICTURES: readonly (Picture & { readonly heading?: string })[] = [
  {
    heading: 'The joint',
    example: 'ogee-cove',
    view: 'joint',
    words:
      'The panel in the frame’s groove, pushed in as far as it goes and hard against the groove’s front wall. It shows what the fit is judged by, and the land; the sizes that cuts are set by stand with the cuts. What decides the verdict is in the accent colour: groove, tongue, insertion, clearance. The verdict stands below in words, with a mark of its own shape, and under it two statements: whether it fits, and whether it can be run.',
  },
  {
    example: 'bevel-wedge',
    view: 'joint',
    words:
      'A tongue that wedges is drawn where it stops, with a cross where it binds; one that does not enter at all is drawn in front of its groove. A job’s errors stand on every drawing of it, each beginning with the word Error.',
  },
  {
    example: 'hall-doors',
    view: 'joint',
    words: 'A sticking is drawn on the front lip where the job gives one.',
  },
  {
    heading: 'The section',
    example: 'ogee-cove',
    view: 'section',
    words:
      'The panel’s edge alone: what is left, hatched as end grain, and what was taken, pale with the stock’s old edge dashed. The chain line is where the frame’s edge comes.',
  },
  {
    example: 'inch-rebate',
    view: 'section',
    words:
      'A job in inches has fractions. One that had to be rounded to 1/64 is marked ≈ and has its decimal under the line.',
  },
  {
    heading: 'The tongue in its groove',
    example: 'ogee-cove',
    view: 'detail',
    words:
      'Ten times as large, or five where that is too big, never less than two, standing as the joint has it: hard against the groove’s front wall, with all the clearance behind it.',
  },
  {
    heading: 'The cuts',
    example: 'ogee-cove',
    view: 'cuts',
    words:
      'What each cut takes, in running order, drawn as the panel lies at the machine: which face is on the table, how high the knife stands above the table and how far out of the fence, and every size that the profile is set out by. A tilted spindle is drawn beside the wood as it leans. The chain line is the knife’s edge.',
  },
  {
    example: 'bead-on-edge',
    view: 'cuts',
    words:
      'Run on edge, the panel stands against the fence. A free outline is given by the ordinates of its corners and by its radii.',
  },
  {
    heading: 'Stile and rail',
    example: 'hall-doors',
    view: 'corner',
    words:
      'Where the rails are coped to a sticking: both closed, in a section along the rail, with the sticking and its groove, the stub tenon in it, and the panel behind them dashed. A gap along the line would be shown and said.',
  },
  {
    heading: 'Panel and door',
    example: 'hall-doors',
    view: 'panel',
    words:
      'The whole panel from the front, with its field, its mitres and the line that the frame covers, over its section across and beside its section along.',
  },
  {
    example: 'hall-doors',
    view: 'door',
    words: 'Frame and panel from the front. A–A is where the joint is drawn: the arrows say which way it is looked at.',
  },
  {
    heading: 'Sheets',
    example: 'hall-doors',
    view: 'sheet',
    words:
      'All that a bench needs, on as many sheets as it takes: the joint and the cuts true to size, to hold against the wood, then every door. The bar at the foot is 100 mm long, on inch sheets 4 in: check a print with a rule before trusting it.',
  },
  {
    example: 'hall-doors',
    view: 'sheet',
    sheet: 2,
    words:
      'Doors of the same sizes share a drawing, and so do panels of the same size whatever door they are for; each says how many are made. What fits a page stands on it, each at a scale of its own.',
  },
  {
    heading: 'In a document',
    example: 'inch-rebate',
    view: 'joint',
    width: 150,
    words:
      'As wide as the document asks for, at the largest standard scale that fits, with a bar to check the print. Drawings of a width that does not suit are refused, naming the least that does.',
  },
];

/** Every file of the gallery, by its path from the top folder. */
export function makeGallery(): Map<string, string> {
  const files = new Map<string, string>();
  const lines = [
    '# Drawings',
    '',
    'Made from the examples by `npm run drawings`; a test holds this page to what the tool draws today.',
    '',
    ...INTRODUCTION,
  ];
  for (const { heading, example, view, words, sheet = 1, width } of PICTURES) {
    const report = reportOn(example);
    const name = `${example}-${view}${sheet > 1 ? `-${sheet}` : ''}${width === undefined ? '' : `-${width}`}.svg`;
    const svg =
      view === 'sheet'
        ? sceneToSvg(sheets(report, { view, paper: 'a4' })[sheet - 1]!)
        : draw(report, width === undefined ? { view } : { view, width, checkBar: true });
    const options = `${sheet > 1 ? ` --sheet ${sheet}` : ''}${width === undefined ? '' : ` --width ${width} --check-bar`}`;
    files.set(`${IMAGES}/${name}`, svg);
    if (heading) lines.push(`## ${heading}`, '');
    lines.push(words, '', `![${report.title}: ${view}](images/drawings/${name})`, '');
    lines.push('```sh', `npx fielded draw examples/${example}/job.yaml --view ${view}${options} -o ${name}`, '```', '');
  }
  lines.push(...CLOSING);
  files.set('docs/drawings.md', `${lines.join('\n')}\n`);
  return files;
}

const INTRODUCTION = [
  '`fielded draw JOB` draws one job true to scale. The scale stands on the drawing. Every figure on it is the report’s own, as',
  'formatted there; lengths that depend on the stock are those of the stock as measured.',
  '',
];

const CLOSING = [
  '## On paper',
  '',
  '`--paper a4`, `letter`, `a3` or `tabloid` puts a drawing on a sheet with a title block; `--landscape` lays it across. `--scale 1:1`',
  'is true to size: a drawing too wide for the paper is broken with break lines, not shrunk, and where even that is not enough the',
  'answer names a scale that fits. `--scale fit` takes the largest scale of ISO 5455 that fits unbroken. What does not fit one sheet',
  'goes on the next, and every sheet says which of how many it is.',
  '',
  'The title block has the fields of ISO 7200. `--number`, `--revision`, `--material`, `--date` and `--drawn-by` go in as they are given,',
  'the shop’s name comes from the shop file, the material from the season where the job has one; what is left out has room to write. Its',
  'tolerance is the clearance between snug and loose, its status counts errors and warnings, and the symbol says first-angle projection.',
  '',
  '## Formats',
  '',
  '| ending | what it is for |',
  '| --- | --- |',
  '| `.svg` | everything: millimetre size, true arcs, live text in IBM Plex Sans, DejaVu Sans or Arial; `--text outlines` turns letters into outlines for office programs that lack the font |',
  '| `.pdf` | prints and keeping: true size, lines and text, the font embedded, all sheets in one file, always ink on white; tagged, PDF/A-2b |',
  '| `.png` | pictures: `--dpi 300` for print, its size noted in the file |',
  '| `.dxf` | drawing programs: outlines of section, joint, cuts and panel at 1:1, lines and true arcs on named layers |',
  '| `.html` | quotes and pages: a figure with title and description for screen readers, to paste into a page; nothing in it can clash with what is there |',
  '',
  'Titles and names may be in any script. SVG and HTML leave letters to the reader’s fonts; PDF, PNG and outlined letters take what the shipped',
  'font lacks from `--font FILE` or the machine’s own fonts, and say on standard error which letters none has.',
  '',
  '`--bare` leaves only the drawing. `--theme light` and `--theme dark` are for screens. `--units both` puts the other unit under the line.',
  '',
  '## How to read them',
  '',
  '- Line widths follow ISO 128: visible edges 0.5 mm, thin lines 0.25 mm, hatching and grain 0.18 mm. Hatching and thin lines are interrupted where a figure stands on them. Dimensions follow ISO 129-1, letters ISO 3098: figures 3.5 mm, words 2.5 mm.',
  '- End grain is hatched at 45°, the frame the other way and wider. Long grain runs along the part.',
  '- Removed wood is pale with the old edge dashed. A chain line is the frame’s edge, or the knife’s.',
  '- Zigzag lines are where a part runs on.',
  '- ✓ sliding, ○ loose, >< tight, →| stops short, × will not enter, ⊗ no tongue: each verdict has a mark of its own shape beside its word.',
  '',
  'A drawing does not replace a test piece: make one in the same stock before cutting the panels, and measure the stock first.',
];

if (process.argv[1] === import.meta.filename) {
  for (const [path, content] of makeGallery()) {
    mkdirSync(dirname(join(ROOT, path)), { recursive: true });
    writeFileSync(join(ROOT, path), content);
  }
}
