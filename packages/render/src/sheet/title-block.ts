import type { Report } from '@fielded/core';
import { verdictSentence } from '@fielded/core';
import { stroke } from '../geometry/stroke.ts';
import type { Item } from '../scene.ts';
import { group, path, text } from '../scene.ts';
import { fitText, textWidth, wrapText } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { type SHEET_WORDS, saySheet } from '../words/english/sheet.ts';
import { drawStatements } from '../words/statement-marks.ts';
import { errorLines, statusWords } from '../words/status.ts';
import { verdictHead } from '../words/title.ts';
import type { InBothUnits } from '../words/units-choice.ts';
import { unitsNote } from '../words/units-note.ts';
import { verdictMark } from '../words/verdict-mark.ts';
import { drawCheckBar } from './check-bar.ts';
import { projectionSymbol, SYMBOL_WIDTH } from './projection-symbol.ts';

/** What the title block says; a field that is not given is left to be filled in by hand. */
export interface BlockFields {
  readonly shop?: string;
  /** The drawing's own number, and which state of it this is. */
  readonly number?: string;
  readonly revision?: string;
  /** As it should stand. */
  readonly date?: string;
  readonly drawnBy?: string;
  readonly material?: string;
}

/** What differs from sheet to sheet. */
interface SheetWords {
  /** What is drawn. */
  readonly name: string;
  readonly scale: string;
  readonly sheet: number;
  readonly of: number;
}

/** The title block of a job's sheets: how high it is, and how it is drawn with its top left corner at (x, y). */
export interface TitleBlock {
  readonly height: number;
  readonly draw: (sheet: SheetWords, x: number, y: number) => Item;
}

const VERDICT_HEIGHT = 5;
const TITLE_HEIGHT = 3.5;
const NOTE_HEIGHT = 2.5;
const LINE = 4.1;
const TITLE_LINE = 5;
const ROW = 4.6;
const MOST_ERROR_LINES = 12;
const MOST_TITLE_LINES = 6;

/**
 * Lays out the title block along the foot of a job's sheets, `width` mm wide, with the fields of ISO 7200: at the left the
 * verdict, both statements and what they mean, at the right what the drawing is. The job's errors stand across its head.
 */
export function layTitleBlock(report: Report & InBothUnits, given: BlockFields, width: number): TitleBlock {
  const half = width * 0.56;
  const room = width - half;
  const errors = errorLines(report, NOTE_HEIGHT, width, MOST_ERROR_LINES);
  const head = errors.length ? errors.length * LINE + 2.5 : 0;
  const verdict = drawVerdict(report, half - 6);
  const whole = wrapText(safeText(report.title), TITLE_HEIGHT, room);
  const title = whole.slice(0, MOST_TITLE_LINES);
  if (whole.length > title.length) title[title.length - 1] = fitText(`${title.at(-1)} …`, TITLE_HEIGHT, room);
  const rows = fieldRows(report, given);
  const atRight = 3 + title.length * TITLE_LINE + 5 + 2 + rows.length * ROW;
  const height = head + Math.max(verdict.height + 10, atRight + 1);
  return {
    height,
    draw: (sheet, x, y) => {
      const top = y + head;
      const foot = y + height;
      const from = x + half;
      const under = top + 3 + title.length * TITLE_LINE + 4.5;
      return group('title block', [
        path('rule', 'thin', [stroke(x, y, x + width, y)]),
        ...errors.map((words, i) => text(`error ${i}`, 'trouble-text', x, y + 5 + i * LINE, words, NOTE_HEIGHT)),
        group('verdict', verdict.draw(x, top)),
        ...title.map((words, i) => text(`title ${i}`, 'text', from, top + 8 + i * TITLE_LINE, words, TITLE_HEIGHT)),
        text('name', 'quiet', from, under, fitText(sheet.name, NOTE_HEIGHT, room), NOTE_HEIGHT),
        ...drawFields(report, rows, sheet, from, foot - 1 - (rows.length - 1) * ROW, room),
        group('bar', drawCheckBar(x, foot - 5, report)),
      ]);
    },
  };
}

/** A field's name and value; null where the sheet says it, '' where it is written in by hand. */
type Field = readonly [name: FieldName, value: string | null];
type FieldName = keyof typeof SHEET_WORDS extends infer K ? (K extends `field.${infer N}` ? N : never) : never;
/** Fields side by side. */
type Row = readonly Field[];

function fieldRows(report: Report, given: BlockFields): readonly Row[] {
  const { snug, loose } = report.fit;
  const material = given.material ?? report.season?.species ?? '';
  return [
    [['shop', safeText(given.shop ?? '')]],
    [['material', safeText(material)]],
    [['tolerance', saySheet('tolerance.clearance', { snug, loose }, report)]],
    [
      ['drawing', safeText(given.number ?? '')],
      ['revision', safeText(given.revision ?? '')],
    ],
    [
      ['drawn by', safeText(given.drawnBy ?? '')],
      ['scale', null],
    ],
    [
      ['date', safeText(given.date ?? '')],
      ['sheet', null],
    ],
    [['status', statusWords(report)]],
  ];
}

function drawFields(
  report: Report,
  rows: readonly Row[],
  { scale, sheet, of }: SheetWords,
  x: number,
  y: number,
  room: number,
): Item[] {
  const items: Item[] = [];
  rows.forEach((row, i) => {
    const base = y + i * ROW;
    row.forEach(([name, value], k) => {
      const label = saySheet(`field.${name}`, {}, report);
      const left = x + (k * room) / 2;
      const start = left + textWidth(label, NOTE_HEIGHT) + 2.5;
      const end = x + ((k + 1) * room) / row.length - (k < row.length - 1 ? 3 : 0);
      const shown = value ?? (name === 'scale' ? scale : saySheet('sheet.of', { sheet, of }, report));
      items.push(text(`${name} word`, 'quiet', left, base, label, NOTE_HEIGHT));
      if (shown) items.push(text(name, 'text', start, base, fitText(shown, NOTE_HEIGHT, end - start), NOTE_HEIGHT));
      else items.push(blank(name, start, end, base + 0.8));
    });
  });
  const last = y + (rows.length - 1) * ROW - NOTE_HEIGHT / 2;
  return [...items, ...projectionSymbol(x + room - SYMBOL_WIDTH - 0.5, last)];
}

/** A line to write on. */
function blank(key: string, from: number, to: number, y: number): Item {
  return path(key, 'thin', [stroke(from, y, to, y)]);
}

/** The verdict, both statements and what to do before the first piece of good wood. */
function drawVerdict(
  report: Report & InBothUnits,
  room: number,
): { height: number; draw: (x: number, y: number) => Item[] } {
  const head = verdictHead(report);
  const notes = [
    ...wrapText(verdictSentence(report), NOTE_HEIGHT, room).map((words) => ({ words, role: 'text' as const })),
    ...wrapText(cautionNote(report), NOTE_HEIGHT, room).map((words) => ({ words, role: 'quiet' as const })),
  ];
  const below = drawStatements(report, 0, 0, NOTE_HEIGHT, room).base;
  return {
    height: 21 + below + (notes.length - 1) * LINE,
    draw: (x, y) => [
      verdictMark(head.mark, x + 2.6, y + 9 - VERDICT_HEIGHT / 2),
      text('word', head.role, x + 8, y + 9, head.words, VERDICT_HEIGHT),
      group('statements', drawStatements(report, x, y + 15, NOTE_HEIGHT, room).items),
      ...notes.map((note, i) => text(`note ${i}`, note.role, x, y + 20.5 + below + i * LINE, note.words, NOTE_HEIGHT)),
    ],
  };
}

/** What to do before the first piece of good wood. */
function cautionNote(report: Report & InBothUnits): string {
  const units = unitsNote(report, report.bothUnits);
  return saySheet('sheet.caution', { units, stock: report.panel.measured }, report);
}
