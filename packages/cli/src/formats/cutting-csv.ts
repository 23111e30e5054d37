import { byJob, type CuttingList, type ListedPanel, say as sayCore, toMillimetres, type Voice } from '@fielded/core';
import type { Reserved } from '../report/cutting-lines.ts';
import { say, sayAll } from '../words/say.ts';
import { csvNumber, csvRow, type Decimal } from './csv-row.ts';

/** The columns; their headings in English are a public format. */
const COLUMNS = ['piece', 'off', 'length', 'width', 'thickness', 'grain', 'wood', 'for', 'note'] as const;

/** The first row, by which a file is known to be ours; the unit follows it. */
export function cuttingHeadings(voice: Voice): string[] {
  return COLUMNS.map((column) => say(`print.csv.${column}`, {}, voice));
}

/**
 * A cutting list as CSV (RFC 4180): a row for each size of part, panel, blank and rough piece; lengths in the voice's unit, along
 * the grain first. Errors of the jobs come first, what is assumed last. Words and numbers follow the voice's language; semicolons
 * part the columns where that has a decimal comma.
 */
export function cuttingCsv(list: CuttingList, voice: Voice, { assumed, errors }: Reserved): string {
  const pen = penFor(voice);
  const note = (what: string, words: string): Row => [what, '', '', '', '', '', '', '', words];
  const rows: Row[] = [
    ...errors.map((message) => note(say('print.csv.error', {}, voice), message)),
    ...listParts(list, pen),
    ...listPanels(list, pen),
    ...listBlanks(list, pen),
    ...listTimber(list, pen),
    ...listLeftOver(list, pen),
    ...assumed.map((words) => note(say('print.csv.assumed', {}, voice), words)),
  ];
  const headings = cuttingHeadings(voice).map((heading, k, all) =>
    k < all.length - 1 ? heading : `${heading} (${voice.units})`,
  );
  return [headings, ...rows].map((row) => csvRow(row, pen.decimal)).join('');
}

/** A value for each of the columns. */
type Row = (string | number)[];

/** How lengths and figures are written: as a cell, within words, and with so many decimals. */
interface Pen {
  readonly voice: Voice;
  readonly decimal: Decimal;
  readonly size: (mm: number) => number;
  readonly said: (mm: number) => string;
  readonly fixed: (value: number, digits: number) => string;
  readonly along: string;
}

function penFor(voice: Voice): Pen {
  const decimal = voice.language?.decimal ?? '.';
  const size = (mm: number) => Number((mm / toMillimetres(1, voice.units)).toFixed(4));
  return {
    voice,
    decimal,
    size,
    said: (mm) => csvNumber(size(mm), decimal),
    fixed: (value, digits) => value.toFixed(digits).replace('.', decimal),
    along: say('print.csv.along', {}, voice),
  };
}

function listParts(list: CuttingList, { voice, size, along }: Pen): Row[] {
  return list.parts.map((p) => [
    sayCore(`part.${p.part}`, {}, voice),
    p.quantity,
    size(p.length),
    size(p.width),
    size(p.thickness),
    along,
    p.wood,
    forWhom(list, p.for, voice),
    '',
  ]);
}

function listPanels(list: CuttingList, { voice, size, fixed }: Pen): Row[] {
  return list.panels.map((p) => [
    say('print.csv.panel', {}, voice),
    p.quantity,
    ...(p.grain === 'up' ? [size(p.height), size(p.width)] : [size(p.width), size(p.height)]),
    size(p.thickness),
    say(`print.grain.${p.grain}`, {}, voice),
    '',
    forWhom(list, p.for, voice),
    p.weight === null ? '' : say('print.csv.kg', { kg: fixed(p.weight, 3) }, voice),
  ]);
}

function listBlanks(list: CuttingList, { voice, size, said, along }: Pen): Row[] {
  return list.blanks.map((b) => [
    say('print.csv.blank', {}, voice),
    b.quantity,
    size(b.length),
    size(b.width),
    size(b.thickness),
    along,
    '',
    joined(
      b.panels.map(({ door, width }) => `${door} ${said(width)}`),
      voice,
    ),
    b.rips.length > 0 ? say('print.csv.rips', { places: joined(b.rips.map(said), voice) }, voice) : '',
  ]);
}

/** The rough pieces of each board, then what of it is ordered. */
function listTimber(list: CuttingList, { voice, size, said, fixed, along }: Pen): Row[] {
  return list.timber.flatMap(({ wood, thickness, pieces, order, boardFeet }): Row[] => {
    const volume = { volume: fixed(order, 4), feet: fixed(boardFeet.order, 2) };
    const ordered = say('print.csv.volume', volume, voice);
    return [
      ...pieces.map((p) => [
        say('print.csv.rough', {}, voice),
        p.quantity,
        size(p.length),
        size(p.width),
        size(thickness),
        along,
        wood,
        p.what,
        p.strips > 1 ? say('print.csv.strips', { count: p.strips, width: said(p.stripWidth) }, voice) : '',
      ]),
      [say('print.csv.order', {}, voice), '', '', '', size(thickness), '', wood, '', ordered],
    ];
  });
}

/** Narrow panels that no blank takes. */
function listLeftOver(list: CuttingList, { voice, size, said, along }: Pen): Row[] {
  return list.leftOver.map((p) => [
    say('print.csv.no-blank', {}, voice),
    p.quantity,
    size(p.length),
    size(p.width),
    '',
    along,
    '',
    p.door,
    p.missing > 0
      ? say('print.csv.missing', { missing: said(p.missing) }, voice)
      : say('print.csv.missing.any', {}, voice),
  ]);
}

function forWhom(list: CuttingList, doors: ListedPanel['for'], voice: Voice): string {
  const shown = byJob(list, doors).map(({ job, doors: own }) => {
    const names = joined(
      own.map(({ door, quantity: count }) => say('print.csv.times', { door, count }, voice)),
      voice,
    );
    return job === '' ? names : say('print.list.of-job', { job, doors: names }, voice);
  });
  return joined(shown, voice);
}

function joined(parts: readonly string[], voice: Voice): string {
  return sayAll(parts, 'print.csv.and', voice);
}
