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
}

const PICTURES: readonly (Picture & { readonly heading?: string })[] = [
  {
    heading: 'The joint',
    example: 'ogee-cove',
    view: 'joint',
    words:
      'The panel in the frame’s groove, pushed in as far as it goes and hard against the groove’s front wall. What decides the verdict is in the accent colour: groove, insertion, clearance. The verdict stands below in words, with a mark of its own shape.',
  },
  {
    example: 'bevel-wedge',
    view: 'joint',
    words:
      'A tongue that wedges is drawn where it stops, with a cross where it binds; one that does not enter at all is drawn in front of its groove.',
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
      'Ten times as large, or five where that is too big, with the panel in the middle of its float: what is free in front of the tongue, behind it, and at the groove’s bottom.',
  },
  {
    heading: 'The cuts',
    example: 'ogee-cove',
    view: 'cuts',
    words:
      'What each cut takes, in running order, drawn as the panel lies at the machine: which face is on the table, and every size that the profile is set out by. The chain line is the knife’s edge.',
  },
  {
    example: 'bead-on-edge',
    view: 'cuts',
    words:
      'Run on edge, the panel stands against the fence. A free outline is given by the ordinates of its corners and by its radii.',
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
    words: 'Frame and panel from the front. A–A is where the joint is drawn.',
  },
  {
    heading: 'Sheets',
    example: 'hall-doors',
    view: 'sheet',
    words:
      'All that a bench needs, on as many sheets as it takes: the joint and the cuts true to size, to hold against the wood, then every door. The bar at the foot is 100 mm long: check a print with a rule before trusting it.',
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
  for (const { heading, example, view, words } of PICTURES) {
    const report = reportOn(example);
    const name = `${example}-${view}.svg`;
    const svg = view === 'sheet' ? sceneToSvg(sheets(report, { view, paper: 'a4' })[0]!) : draw(report, { view });
    files.set(`${IMAGES}/${name}`, svg);
    if (heading) lines.push(`## ${heading}`, '');
    lines.push(words, '', `![${report.title}: ${view}](images/drawings/${name})`, '');
    lines.push(
      '```sh',
      `npx fielded draw examples/${example}/job.yaml --view ${view} -o ${example}-${view}.svg`,
      '```',
      '',
    );
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
  'answer names a scale that fits. `--scale fit` takes the largest scale of ISO 5455 that fits unbroken. `--date` and `--drawn-by` go',
  'into the title block as they are given; left out, there is room to write.',
  '',
  '## Formats',
  '',
  '| ending | what it is for |',
  '| --- | --- |',
  '| `.svg` | everything: millimetre size, true arcs, live text in IBM Plex Sans, DejaVu Sans or Arial; `--text outlines` turns letters into outlines for office programs that lack the font |',
  '| `.pdf` | prints: true size, the font embedded, all sheets in one file, always ink on white |',
  '| `.png` | pictures: `--dpi 300` for print, its size noted in the file |',
  '| `.html` | quotes and pages: a figure with title and description for screen readers, to paste into a page; nothing in it can clash with what is there |',
  '',
  '`--bare` leaves only the drawing. `--theme light` and `--theme dark` are for screens. `--units both` puts the other unit under the line.',
  '',
  '## How to read them',
  '',
  '- Line widths follow ISO 128: outlines 0.5 mm, thin lines 0.25 mm. Dimensions follow ISO 129-1, letters ISO 3098: figures 3.5 mm, words 2.5 mm.',
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
