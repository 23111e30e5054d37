import { byJob, type CuttingList, type ListedPanel, type Report, say as sayCore } from '@fielded/core';
import type { Block, Table, TextDocument } from '../document/document.ts';
import { documentPages } from '../document/document-pages.ts';
import { safeDocument } from '../document/safe-document.ts';
import type { Scene } from '../scene.ts';
import type { PaperName } from '../sheet/paper.ts';
import { safeText } from '../text/safe-text.ts';
import { sayList } from '../words/english/list.ts';
import { sayNote } from '../words/english/note.ts';
import { type InVoice, spokenLength, spokenNumber } from '../words/lengths.ts';
import { doorSchedule } from './door-schedule.ts';
import { drawBoardBlank, drawPanelPicture } from './pictures.ts';

/** What goes into the sheets beside the list itself. */
export interface CuttingSheetOptions {
  /** The jobs' reports, in the list's order. */
  readonly reports: readonly Report[];
  /** The shop's rules that were not given and had to be assumed, as words: "kerf 3.2 mm". */
  readonly assumed: readonly string[];
  readonly paper?: PaperName;
}

/** Says a heading or another entry without figures. */
type Heading = Parameters<typeof sayList>[0];

/** The longest side of a picture on the sheets, mm of paper. */
const BLANK_WIDTH = 82;
const PANEL_SIZE = 75;
const SCALES = [2, 5, 10, 15, 20, 25, 30, 40, 50, 75, 100];

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
  const voice: InVoice = reports[0] ?? { units: 'mm' };
  const rows = list.parts.length + list.panels.length + list.timber.reduce((sum, { pieces }) => sum + pieces.length, 0);
  if (rows > MOST_ROWS) throw new RangeError(`the list has ${rows} rows, and sheets hold up to ${MOST_ROWS}`);
  return [
    ...documentPages(sawSheet(list, voice, options), paper),
    ...documentPages(moulderSheet(list, voice, options), paper),
    ...documentPages(panelSheet(list, voice), paper),
    ...reports.flatMap((report) => doorSchedule(report, paper)),
  ];
}

function document(
  what: 'list.saw' | 'list.moulder' | 'list.panels',
  list: CuttingList,
  voice: InVoice,
  blocks: readonly Block[],
): TextDocument {
  const title = sayList(what, { jobs: list.jobs.map(safeText).join(', ') }, voice);
  const language = sayNote('page.language', {}, voice);
  const spoken = voice.language && { spoken: voice.language };
  return safeDocument({ title, language, foot: title, blocks: [{ kind: 'title', text: title }, ...blocks], ...spoken });
}

/** What stands against making it, first on every sheet. */
function troubles(reports: readonly Report[], voice: InVoice): Block[] {
  const errors = reports.flatMap(({ problems }) => problems.filter(({ severity }) => severity === 'error'));
  return errors.slice(0, 6).map(({ message }) => ({
    kind: 'paragraph',
    text: sayNote('error.line', { message }, voice),
    tone: 'trouble',
  }));
}

function sawSheet(list: CuttingList, voice: InVoice, { reports, assumed }: CuttingSheetOptions): TextDocument {
  const say = headings(voice);
  const size = (mm: number) => plainSize(mm, voice);
  const parts: Table = {
    kind: 'table',
    about: say('list.parts'),
    head: say.all('list.part', 'list.off', 'list.length', 'list.width', 'list.thick', 'list.for'),
    rows: list.parts.map((p) => [
      sayCore(`part.${p.part}`, {}, voice),
      String(p.quantity),
      size(p.length),
      size(p.width),
      size(p.thickness),
      forWhom(list, p.for),
    ]),
    foot: [],
    shares: sharesIn(voice.units, [20, 8, 15, 14, 12, 50], [18, 7, 19, 17, 17, 42]),
    align: ['start', 'end', 'end', 'end', 'end', 'start'],
  };
  return document('list.saw', list, voice, [
    ...troubles(reports, voice),
    {
      kind: 'paragraph',
      text: say(`list.finished.${voice.units}`),
      tone: 'quiet',
    },
    { kind: 'heading', text: say('list.frames') },
    parts,
    ...blankBlocks(list, voice, reports),
    ...timberBlocks(list, voice, assumed),
  ]);
}

function blankBlocks({ blanks, leftOver }: CuttingList, voice: InVoice, reports: readonly Report[]): Block[] {
  const say = headings(voice);
  const doorsOf = (job: string) => reports.find(({ title }) => title === job)?.doors ?? [];
  if (blanks.length + leftOver.length === 0) return [];
  const longest = Math.max(1, ...blanks.map(({ length }) => length));
  const parts = SCALES.find((n) => longest / n <= BLANK_WIDTH) ?? 100;
  return [
    { kind: 'heading', text: say('list.blanks') },
    {
      kind: 'paragraph',
      text: say('list.blanks.how'),
    },
    {
      kind: 'figures',
      figures: blanks.map((blank) => ({
        picture: drawBoardBlank(blank, voice, 1 / parts, doorsOf(blank.job)),
        caption: sayBlank(blank, voice),
      })),
    },
    ...leftOver.map(
      ({ door, width, length, quantity, missing }): Block => ({
        kind: 'paragraph',
        tone: 'trouble',
        text: sayList(
          missing > 0 ? 'list.left.missing' : 'list.left',
          { count: quantity, length, width, missing, door: safeText(door) },
          voice,
        ),
      }),
    ),
  ];
}

function sayBlank({ quantity: count, length, width, rips }: CuttingList['blanks'][number], voice: InVoice): string {
  if (rips.length === 0) return sayList('list.blank', { count, length, width }, voice);
  const places = rips.map((at) => spokenLength(at, voice, 1)).join(', ');
  return sayList('list.blank.rips', { count, length, width, rips: places }, voice);
}

function timberBlocks({ timber }: CuttingList, voice: InVoice, assumed: readonly string[]): Block[] {
  const say = headings(voice);
  const both = (m3: number, boardFeet: number) => {
    const [volume, feet] = [spokenNumber(m3, 4, voice), spokenNumber(boardFeet, 1, voice)];
    return voice.units === 'in'
      ? sayList('list.feet', { feet }, voice)
      : sayList('list.volume', { volume, feet }, voice);
  };
  return [
    { kind: 'heading', text: say('list.timber') },
    {
      kind: 'table',
      about: say('list.timber.about'),
      head: say.all('list.wood', 'list.thick', 'list.timber.finished', 'list.timber.rough', 'list.timber.order'),
      rows: timber.map(({ wood, thickness, finished, rough, order, boardFeet }) => [
        wood === '' ? say('list.wood.none') : safeText(wood),
        plainSize(thickness, voice),
        both(finished, boardFeet.finished),
        both(rough, boardFeet.rough),
        both(order, boardFeet.order),
      ]),
      foot: [],
      shares: sharesIn(voice.units, [22, 10, 26, 26, 26], [28, 20, 18, 18, 18]),
      align: ['start', 'end', 'end', 'end', 'end'],
    },
    { kind: 'heading', text: say('list.rough') },
    {
      kind: 'table',
      about: say('list.rough.about'),
      head: say.all('list.piece', 'list.off', 'list.length', 'list.width', 'list.thick', 'list.strips'),
      rows: timber.flatMap(({ pieces, thickness }) =>
        pieces.map(({ what, quantity, length, width, strips, stripWidth }) => [
          safeText(what),
          String(quantity),
          plainSize(length, voice),
          plainSize(width, voice),
          plainSize(thickness, voice),
          strips === 1
            ? say('list.strips.one')
            : sayList('list.strips.more', { count: strips, width: plainSize(stripWidth, voice) }, voice),
        ]),
      ),
      foot: [],
      shares: sharesIn(voice.units, [44, 8, 14, 14, 12, 20], [34, 7, 19, 18, 17, 25]),
      align: ['start', 'end', 'end', 'end', 'end', 'end'],
    },
    ...(assumed.length === 0
      ? []
      : [
          {
            kind: 'paragraph',
            tone: 'quiet',
            text: sayList('list.assumed', { figures: assumed.join(', ') }, voice),
          } as const,
        ]),
  ];
}

function moulderSheet(list: CuttingList, voice: InVoice, { reports }: CuttingSheetOptions): TextDocument {
  const say = headings(voice);
  return document('list.moulder', list, voice, [
    ...troubles(reports, voice),
    {
      kind: 'paragraph',
      text: say('list.moulder.first'),
    },
    ...curvedWork(reports),
    ...reports.flatMap((report): Block[] => [
      { kind: 'heading', text: sayList('list.cuts', { job: safeText(report.title) }, voice) },
      {
        kind: 'table',
        about: sayList('list.cuts', { job: report.title }, voice),
        head: say.all('list.cut', 'list.face', 'list.cutter', 'list.depth', 'list.reach'),
        rows: report.section.cuts.map(({ name, side, run, depth, reach, presented }) => [
          safeText(name),
          say(`list.${side}`),
          presented === 0 ? say(`list.run.${run}`) : sayList('list.run.tilted', { tilt: presented }, voice),
          plainSize(depth, voice),
          plainSize(reach, voice),
        ]),
        foot: [],
        shares: [34, 14, 24, 16, 16],
        align: ['start', 'start', 'start', 'end', 'end'],
      },
    ]),
    { kind: 'heading', text: say('list.panels.heading') },
    {
      kind: 'table',
      about: say('list.panels.heading'),
      head: say.all(
        'list.off',
        'list.width',
        'list.height',
        'list.thick',
        'list.grain',
        'list.field',
        'list.weight',
        'list.for',
      ),
      rows: list.panels.map((p) => [
        String(p.quantity),
        plainSize(p.width, voice),
        plainSize(p.height, voice),
        plainSize(p.thickness, voice),
        say(`list.grain.${p.grain}`),
        p.field === null
          ? say('list.field.none')
          : `${plainSize(p.field.width, voice)} × ${plainSize(p.field.height, voice)}`,
        p.weight === null ? '' : spokenNumber(p.weight, 2, voice),
        forWhom(list, p.for),
      ]),
      foot: [],
      shares: sharesIn(voice.units, [8, 14, 14, 12, 14, 26, 14, 36], [10, 20, 20, 18, 13, 34, 14, 24]),
      align: ['end', 'end', 'end', 'end', 'start', 'end', 'end', 'start'],
    },
  ]);
}

/** The caution on shaped heads, once. */
function curvedWork(reports: readonly Report[]): Block[] {
  const caution = reports.flatMap(({ problems }) => problems).find(({ code }) => code === 'curved-work');
  return caution === undefined ? [] : [{ kind: 'paragraph', text: caution.message }];
}

function panelSheet(list: CuttingList, voice: InVoice): TextDocument {
  const longest = Math.max(1, ...list.panels.map(({ width, height }) => Math.max(width, height)));
  const parts = SCALES.find((n) => longest / n <= PANEL_SIZE) ?? 100;
  const all = list.panels.length;
  const some = all > MOST_PANELS ? [sayList('list.drawn', { most: MOST_PANELS, all }, voice)] : [];
  return document('list.panels', list, voice, [
    {
      kind: 'paragraph',
      text: [sayList(`list.scale.${voice.units}`, { parts }, voice), ...some].join(' '),
      tone: 'quiet',
    },
    {
      kind: 'figures',
      figures: list.panels.slice(0, MOST_PANELS).map((panel) => ({
        picture: drawPanelPicture(panel, voice, 1 / parts),
        caption: sayList('list.panel', { count: panel.quantity, doors: forWhom(list, panel.for) }, voice),
      })),
    },
  ]);
}

/** Shares of columns: fractions of an inch take more room than millimetres, and no figure may be broken. */
function sharesIn(
  units: Report['units'],
  inMillimetres: readonly number[],
  inInches: readonly number[],
): readonly number[] {
  return units === 'in' ? inInches : inMillimetres;
}

/** Says headings, one or several, in a language. */
function headings(voice: InVoice) {
  const say = (key: Heading): string => sayList(key, {}, voice);
  return Object.assign(say, { all: (...keys: Heading[]) => keys.map(say) });
}

/** A size in a column whose unit the sheet has said. */
function plainSize(mm: number, voice: InVoice): string {
  return spokenLength(mm, voice, 1).replaceAll(` ${voice.units}`, '');
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
