import type { Report } from '@fielded/core';
import { verdictSentence } from '@fielded/core';
import { type Loop, polygon } from '@fielded/geometry';
import type { Item } from '../scene.ts';
import { group, path, text } from '../scene.ts';
import { fitText, textWidth, wrapText } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { spokenLength, unitsNote } from '../words/lengths.ts';
import type { InBothUnits } from '../words/units-choice.ts';
import { goesTogether, verdictHeading } from '../words/verdict.ts';
import { verdictMark } from '../words/verdict-mark.ts';

/** What the foot of a sheet says beside the verdict. */
export interface TitleBlock {
  /** What is drawn. */
  readonly name: string;
  readonly scale: string;
  /** As the caller writes it; '' leaves it to be filled in by hand. */
  readonly date: string;
  readonly drawnBy: string;
  readonly sheet: number;
  readonly of: number;
}

export const BLOCK_HEIGHT = 43;
const VERDICT_HEIGHT = 5;
const TITLE_HEIGHT = 3.5;
const NOTE_HEIGHT = 2.5;
const BAR = 100;

/** The title block along the foot of a sheet, `width` mm wide with its top left corner at (x, y). */
export function drawTitleBlock(report: Report, block: TitleBlock, x: number, y: number, width: number): Item {
  const right = x + width;
  const half = width * 0.56;
  const items: Item[] = [
    path('rule', 'thin', [
      polygon(
        [
          [x, y],
          [right, y],
        ],
        false,
      ),
    ]),
  ];
  items.push(group('verdict', drawVerdict(report, x, y, half - 6)));

  const from = x + half;
  const room = right - from;
  const title = wrapText(safeText(report.title), TITLE_HEIGHT, room).slice(0, 2);
  title.forEach((words, i) => {
    items.push(text(`title ${i}`, 'text', from, y + 8 + i * 5, words, TITLE_HEIGHT));
  });
  const under = y + 8 + title.length * 5;
  items.push(text('name', 'quiet', from, under, fitText(block.name, NOTE_HEIGHT, room), NOTE_HEIGHT));
  const fields: [string, string][] = [
    ['scale', block.scale],
    ['sheet', `${block.sheet} of ${block.of}`],
    ['date', safeText(block.date)],
    ['drawn by', safeText(block.drawnBy)],
  ];
  const column = room / 2;
  fields.forEach(([label, value], i) => {
    const fieldX = from + (i % 2) * column;
    const base = y + BLOCK_HEIGHT - 9 + Math.floor(i / 2) * 7;
    const labelWidth = textWidth(label, NOTE_HEIGHT) + 2.5;
    items.push(text(`${label} word`, 'quiet', fieldX, base, label, NOTE_HEIGHT));
    const valueRoom = column - labelWidth - 3;
    if (value)
      items.push(text(label, 'text', fieldX + labelWidth, base, fitText(value, NOTE_HEIGHT, valueRoom), NOTE_HEIGHT));
    else
      items.push(
        path(label, 'thin', [
          polygon(
            [
              [fieldX + labelWidth, base + 0.8],
              [fieldX + column - 3, base + 0.8],
            ],
            false,
          ),
        ]),
      );
  });
  items.push(group('bar', drawBar(x, y + BLOCK_HEIGHT - 5)));
  return group('title block', items);
}

function drawVerdict(report: Report, x: number, y: number, room: number): Item[] {
  const { verdict } = report.fit;
  const role = goesTogether(verdict) ? 'judged-text' : 'trouble-text';
  const items: Item[] = [
    verdictMark(verdict, x + 2.6, y + 9 - VERDICT_HEIGHT / 2),
    text('word', role, x + 8, y + 9, verdictHeading(verdict), VERDICT_HEIGHT),
  ];
  const notes = [
    ...wrapText(verdictSentence(report), NOTE_HEIGHT, room).map((words) => ({ words, role: 'text' as const })),
    ...wrapText(cautionNote(report), NOTE_HEIGHT, room).map((words) => ({ words, role: 'quiet' as const })),
  ];
  notes.slice(0, 5).forEach(({ words, role }, i) => {
    items.push(text(`note ${i}`, role, x, y + 14.5 + i * 4.3, words, NOTE_HEIGHT));
  });
  return items;
}

/** What to do before the first piece of good wood. */
function cautionNote({ panel, units, bothUnits }: Report & InBothUnits): string {
  return `Sizes in ${unitsNote(units, bothUnits)}. Make a test piece first, and measure the stock: this is drawn for ${spokenLength(panel.measured, units)}.`;
}

/** A bar 100 mm long to check the print with a rule. */
function drawBar(x: number, y: number): Item[] {
  const ticks: Loop[] = [
    polygon(
      [
        [x, y],
        [x + BAR, y],
      ],
      false,
    ),
  ];
  for (let at = 0; at <= BAR; at += 10) {
    const tall = at % 50 === 0 ? 2.4 : 1.4;
    ticks.push(
      polygon(
        [
          [x + at, y],
          [x + at, y - tall],
        ],
        false,
      ),
    );
  }
  return [
    path('bar', 'thin', ticks),
    text('bar words', 'quiet', x, y + 4, '100 mm: check the print with a rule', NOTE_HEIGHT),
  ];
}
