import { byJob, type CuttingList, formatLength, formatNumber, type ListedPanel, type Report } from '@fielded/core';
import type { Block, Table, TextDocument } from '../document/document.ts';
import { documentPages } from '../document/document-pages.ts';
import { safeDocument } from '../document/safe-document.ts';
import type { Scene } from '../scene.ts';
import type { PaperName } from '../sheet/paper.ts';
import { safeText } from '../text/safe-text.ts';
import { doorSchedule } from './door-schedule.ts';
import { drawBlank, drawPanelPicture } from './pictures.ts';

/** What goes into the sheets beside the list itself. */
export interface CuttingSheetOptions {
  /** The jobs' reports, in the list's order. */
  readonly reports: readonly Report[];
  /** The shop's rules that were not given and had to be assumed, as words: "kerf 3.2 mm". */
  readonly assumed: readonly string[];
  readonly paper?: PaperName;
}

/** The longest side of a picture on the sheets, mm of paper. */
const BLANK_WIDTH = 82;
const PANEL_SIZE = 75;
const SCALES = [2, 5, 10, 15, 20, 25, 30, 40, 50, 75, 100];

type Units = Report['units'];

/** Panels that are drawn: more than anyone looks through. */
const MOST_PANELS = 120;
/** Rows of all tables together: 60 sheets, which take some two seconds to write. */
const MOST_ROWS = 2000;

/**
 * A cutting list on sheets: for the saw, for the moulder, every panel drawn with its number, every door from the front.
 *
 * @throws RangeError for more than 2,000 sizes of parts, panels and rough pieces together.
 */
export function cuttingSheets(list: CuttingList, options: CuttingSheetOptions): Scene[] {
  const { reports, paper = 'a4' } = options;
  const units = reports[0]?.units ?? 'mm';
  const rows = list.parts.length + list.panels.length + list.timber.reduce((sum, { pieces }) => sum + pieces.length, 0);
  if (rows > MOST_ROWS) throw new RangeError(`the list has ${rows} rows, and sheets hold up to ${MOST_ROWS}`);
  return [
    ...documentPages(sawSheet(list, units, options), paper),
    ...documentPages(moulderSheet(list, units, options), paper),
    ...documentPages(panelSheet(list, units), paper),
    ...reports.flatMap((report) => doorSchedule(report, paper)),
  ];
}

function document(what: string, list: CuttingList, blocks: readonly Block[]): TextDocument {
  const title = `${what}: ${list.jobs.map(safeText).join(', ')}`;
  return safeDocument({ title, language: 'en', foot: title, blocks: [{ kind: 'title', text: title }, ...blocks] });
}

/** What stands against making it, first on every sheet. */
function troubles(reports: readonly Report[]): Block[] {
  const errors = reports.flatMap(({ problems }) => problems.filter(({ severity }) => severity === 'error'));
  return errors.slice(0, 6).map(({ message }) => ({ kind: 'paragraph', text: `Error: ${message}`, tone: 'trouble' }));
}

function sawSheet(list: CuttingList, units: Units, { reports, assumed }: CuttingSheetOptions): TextDocument {
  const size = (mm: number) => plainSize(mm, units);
  const parts: Table = {
    kind: 'table',
    about: 'Parts of the frames',
    head: ['Part', 'Off', `Length`, 'Width', 'Thick', 'For'],
    rows: list.parts.map((p) => [
      p.part,
      String(p.quantity),
      size(p.length),
      size(p.width),
      size(p.thickness),
      forWhom(list, p.for),
    ]),
    foot: [],
    shares: sharesIn(units, [20, 8, 15, 14, 12, 50], [18, 7, 19, 17, 17, 42]),
    align: ['start', 'end', 'end', 'end', 'end', 'start'],
  };
  return document('For the saw', list, [
    ...troubles(reports),
    {
      kind: 'paragraph',
      text: `Finished sizes in ${unitWord(units)}. Rails and muntins include what goes into the joint.`,
      tone: 'quiet',
    },
    { kind: 'heading', text: 'Frames' },
    parts,
    ...blankBlocks(list, units, reports),
    ...timberBlocks(list, units, assumed),
  ]);
}

function blankBlocks({ blanks, leftOver }: CuttingList, units: Units, reports: readonly Report[]): Block[] {
  const doorsOf = (job: string) => reports.find(({ title }) => title === job)?.doors ?? [];
  if (blanks.length + leftOver.length === 0) return [];
  const longest = Math.max(1, ...blanks.map(({ length }) => length));
  const parts = SCALES.find((n) => longest / n <= BLANK_WIDTH) ?? 100;
  return [
    { kind: 'heading', text: 'Blanks for narrow panels' },
    {
      kind: 'paragraph',
      text: 'Glue up each blank, run the end grain of every cut on it, then rip at the broken lines. Rips are given to the middle of the saw cut, from the upper edge. A shaped head is sawn and run after ripping.',
    },
    {
      kind: 'figures',
      figures: blanks.map((blank) => ({
        picture: drawBlank(blank, units, 1 / parts, doorsOf(blank.job)),
        caption: `${blank.quantity} off, ${size(blank.length, units)} long × ${size(blank.width, units)} wide${ripWords(blank.rips, units)}`,
      })),
    },
    ...leftOver.map(
      ({ door, width, length, quantity, missing }): Block => ({
        kind: 'paragraph',
        tone: 'trouble',
        // The name comes last: one that runs from right to left turns the figures after it round.
        text: `No blank for ${quantity} of ${size(length, units)} × ${size(width, units)}: ${missing > 0 ? `${size(missing, units)} of width is missing. A spare panel` : 'a spare panel of any width'} or a carrier would do it. Door ${safeText(door)}`,
      }),
    ),
  ];
}

function ripWords(rips: readonly number[], units: Units): string {
  return rips.length === 0 ? '' : `; rip at ${rips.map((at) => size(at, units)).join(', ')}`;
}

function timberBlocks({ timber }: CuttingList, units: Units, assumed: readonly string[]): Block[] {
  const volume = (m3: number) => (units === 'in' ? '' : `${formatNumber(m3, 4)} m³`);
  const both = (m3: number, feet: number) => [volume(m3), `${formatNumber(feet, 1)} BF`].filter(Boolean).join(', ');
  return [
    { kind: 'heading', text: 'Timber' },
    {
      kind: 'table',
      about: 'Timber to order',
      head: ['Wood', 'Thick', 'Finished', 'Rough', 'To order'],
      rows: timber.map(({ wood, thickness, finished, rough, order, boardFeet }) => [
        wood === '' ? 'not named' : safeText(wood),
        plainSize(thickness, units),
        both(finished, boardFeet.finished),
        both(rough, boardFeet.rough),
        both(order, boardFeet.order),
      ]),
      foot: [],
      shares: sharesIn(units, [22, 10, 26, 26, 26], [28, 20, 18, 18, 18]),
      align: ['start', 'end', 'end', 'end', 'end'],
    },
    { kind: 'heading', text: 'Rough pieces' },
    {
      kind: 'table',
      about: 'Rough pieces to saw',
      head: ['Piece', 'Off', 'Length', 'Width', 'Thick', 'Strips'],
      rows: timber.flatMap(({ pieces, thickness }) =>
        pieces.map(({ what, quantity, length, width, strips, stripWidth }) => [
          safeText(what),
          String(quantity),
          plainSize(length, units),
          plainSize(width, units),
          plainSize(thickness, units),
          strips === 1 ? 'one' : `${strips} of ${plainSize(stripWidth, units)}`,
        ]),
      ),
      foot: [],
      shares: sharesIn(units, [44, 8, 14, 14, 12, 20], [34, 7, 19, 18, 17, 25]),
      align: ['start', 'end', 'end', 'end', 'end', 'end'],
    },
    ...(assumed.length === 0
      ? []
      : [
          {
            kind: 'paragraph',
            tone: 'quiet',
            text: `Assumed, since neither job nor shop says: ${assumed.join(', ')}.`,
          } as const,
        ]),
  ];
}

function moulderSheet(list: CuttingList, units: Units, { reports }: CuttingSheetOptions): TextDocument {
  return document('For the moulder', list, [
    ...troubles(reports),
    {
      kind: 'paragraph',
      text: 'Measure the stock and cut a test piece first. Run the ends before the edges, so that the edges take the breakout away. The marks on the tools, the rules where you work and trained practice go first.',
    },
    ...curvedWork(reports),
    ...reports.flatMap((report): Block[] => [
      { kind: 'heading', text: `Cuts of ${safeText(report.title)}` },
      {
        kind: 'table',
        about: `Cuts of ${report.title}`,
        head: ['Cut', 'Face', 'Cutter', 'Depth', 'Reach'],
        rows: report.section.cuts.map(({ name, side, run, depth, reach, presented }) => [
          safeText(name),
          side,
          presented === 0 ? `${run} the stock` : `stock at ${formatNumber(presented, 1)}°`,
          plainSize(depth, units),
          plainSize(reach, units),
        ]),
        foot: [],
        shares: [34, 14, 24, 16, 16],
        align: ['start', 'start', 'start', 'end', 'end'],
      },
    ]),
    { kind: 'heading', text: 'Panels' },
    {
      kind: 'table',
      about: 'Panels',
      head: ['Off', 'Width', 'Height', 'Thick', 'Grain', 'Field', 'kg each', 'For'],
      rows: list.panels.map((p) => [
        String(p.quantity),
        plainSize(p.width, units),
        plainSize(p.height, units),
        plainSize(p.thickness, units),
        p.grain,
        p.field === null ? 'none' : `${plainSize(p.field.width, units)} × ${plainSize(p.field.height, units)}`,
        p.weight === null ? '' : formatNumber(p.weight, 2),
        forWhom(list, p.for),
      ]),
      foot: [],
      shares: sharesIn(units, [8, 14, 14, 12, 14, 26, 14, 36], [10, 20, 20, 18, 13, 34, 14, 24]),
      align: ['end', 'end', 'end', 'end', 'start', 'end', 'end', 'start'],
    },
  ]);
}

/** The caution on shaped heads, once. */
function curvedWork(reports: readonly Report[]): Block[] {
  const caution = reports.flatMap(({ problems }) => problems).find(({ code }) => code === 'curved-work');
  return caution === undefined ? [] : [{ kind: 'paragraph', text: caution.message }];
}

function panelSheet(list: CuttingList, units: Units): TextDocument {
  const longest = Math.max(1, ...list.panels.map(({ width, height }) => Math.max(width, height)));
  const parts = SCALES.find((n) => longest / n <= PANEL_SIZE) ?? 100;
  return document('Panels', list, [
    {
      kind: 'paragraph',
      text: `Scale 1:${parts}, sizes in ${unitWord(units)}.${notAll(list.panels.length, MOST_PANELS)}`,
      tone: 'quiet',
    },
    {
      kind: 'figures',
      figures: list.panels.slice(0, MOST_PANELS).map((panel) => ({
        picture: drawPanelPicture(panel, units, 1 / parts),
        caption: `${panel.quantity} off: ${forWhom(list, panel.for)}`,
      })),
    },
  ]);
}

/** Shares of columns: fractions of an inch take more room than millimetres, and no figure may be broken. */
function sharesIn(units: Units, inMillimetres: readonly number[], inInches: readonly number[]): readonly number[] {
  return units === 'in' ? inInches : inMillimetres;
}

/** What is said where not all of so many are drawn. */
function notAll(count: number, most: number): string {
  return count > most ? ` The first ${most} of ${count} sizes are drawn; the tables have them all.` : '';
}

function unitWord(units: Units): string {
  return units === 'in' ? 'inches' : 'millimetres';
}

function size(mm: number, units: Units): string {
  return formatLength(mm, units, 1);
}

/** A size in a column whose unit the sheet has said. */
function plainSize(mm: number, units: Units): string {
  return size(mm, units).replaceAll(` ${units}`, '');
}

/** "A × 4, B": the doors that pieces are for; by job where there are several. */
function forWhom(list: CuttingList, doors: ListedPanel['for']): string {
  return byJob(list, doors)
    .map(({ job, doors: own }) => {
      const names = own
        .map(({ door, quantity }) => `${safeText(door)}${quantity > 1 ? `\u00a0×\u00a0${quantity}` : ''}`)
        .join(', ');
      return job === '' ? names : `${safeText(job)}: ${names}`;
    })
    .join('; ');
}
