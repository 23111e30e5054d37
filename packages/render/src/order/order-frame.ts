import type { Report } from '@fielded/core';
import { stroke } from '../geometry/stroke.ts';
import { group, type Item, path, type Scene, text } from '../scene.ts';
import { drawCheckBar } from '../sheet/check-bar.ts';
import { fitText, textWidth } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { unitsNote } from '../words/lengths.ts';

/** What stands in the title block of an order; what is not given is left to be written in by hand. */
export interface KnifeOrderFields {
  readonly number?: string;
  readonly revision?: string;
  readonly date?: string;
  readonly orderedBy?: string;
}

/** A4 upright, and what an order keeps free on it, mm. */
export const ORDER_PAPER = { width: 210, height: 297, margin: 12, foot: 44 } as const;

const WORDS = 2.5;

/** One sheet of an order: its drawing, with heading and title block. */
export function orderPage(
  items: readonly Item[],
  words: {
    readonly heading: string;
    readonly name: string;
    readonly title: string;
    readonly scale: string;
    readonly sheet: number;
    readonly of: number;
  },
  fields: KnifeOrderFields,
  units: Report['units'],
): Scene {
  const { width, height, margin } = ORDER_PAPER;
  const title = `${safeText(words.title)}: ${words.name}, sheet ${words.sheet} of ${words.of}`;
  return {
    width,
    height,
    scale: 1,
    title,
    description: `${words.heading}. ${title}.`,
    items: [
      text('heading', 'text', margin, margin + 5, fitText(words.heading, 5, width - 2 * margin), 5),
      group('drawing', items),
      group('title block', titleBlock(words, fields, units)),
    ],
  };
}

function titleBlock(
  words: {
    readonly name: string;
    readonly title: string;
    readonly scale: string;
    readonly sheet: number;
    readonly of: number;
  },
  { number = '', revision = '', date = '', orderedBy = '' }: KnifeOrderFields,
  units: Report['units'],
): Item[] {
  const { width, height, margin } = ORDER_PAPER;
  const [left, right] = [margin, width - margin];
  const top = height - margin - 30;
  const middle = left + 104;
  const items: Item[] = [
    path('rule', 'thin', [stroke(left, top, right, top)]),
    text('job', 'text', left, top + 6, fitText(safeText(words.title), 3.5, 100), 3.5),
    text(
      'name',
      'quiet',
      left,
      top + 11,
      fitText(`${words.name} · ${words.scale} · ${unitsNote(units)}`, WORDS, 100),
      WORDS,
    ),
    ...['The marks on head and knives, and the rules where', 'you work, go before this sheet.'].map((line, i) =>
      text(`marks ${i}`, 'quiet', left, top + 15.4 + i * 3.8, line, WORDS),
    ),
    ...drawCheckBar(left, top + 26, units, true),
  ];
  const rows: readonly (readonly [string, string])[] = [
    ['order', safeText(number)],
    ['revision', safeText(revision)],
    ['date', safeText(date)],
    ['ordered by', safeText(orderedBy)],
    ['sheet', `${words.sheet} of ${words.of}`],
  ];
  rows.forEach(([label, value], i) => {
    const base = top + 6 + i * 5.2;
    const start = middle + textWidth('ordered by', WORDS) + 4;
    items.push(text(`${label} word`, 'quiet', middle, base, label, WORDS));
    if (value) items.push(text(label, 'text', start, base, fitText(value, WORDS, right - start), WORDS));
    else items.push(path(`${label} line`, 'thin', [stroke(start, base + 0.8, right, base + 0.8)]));
  });
  return items;
}
