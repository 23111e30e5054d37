import { stroke } from '../geometry/stroke.ts';
import { type OfficePaper, PAPERS, toMiddle } from '../paper.ts';
import { group, type Item, moveItems, path, type Scene, text } from '../scene.ts';
import { drawCheckBar } from '../sheet/check-bar.ts';
import { fitText, heightToFit, textWidth } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { sayKnife } from '../words/english/knife.ts';
import type { InVoice } from '../words/lengths.ts';
import { unitsNote } from '../words/units-note.ts';

/** What stands in the title block of an order; a field that is not given is left to be written in by hand. */
export interface KnifeOrderFields {
  readonly number?: string;
  readonly revision?: string;
  readonly date?: string;
  readonly orderedBy?: string;
}

/** How wide an order is laid out, and what it keeps free of the sheet, mm: wider paper leaves more white at both sides. */
export const ORDER_PAPER = { width: 210, margin: 12, foot: 44 } as const;

const WORDS = 2.5;

/** One sheet of an order: its drawing, with heading and title block. */
export function orderPage(
  drawing: readonly Item[],
  words: {
    readonly heading: string;
    readonly name: string;
    readonly title: string;
    readonly scale: string;
    readonly sheet: number;
    readonly of: number;
  },
  fields: KnifeOrderFields,
  paper: OfficePaper,
  voice: InVoice,
): Scene {
  const { width, margin } = ORDER_PAPER;
  const { name, sheet, of } = words;
  const title = sayKnife('order.title', { job: safeText(words.title), name, sheet, of }, voice);
  const items = [
    text('heading', 'text', margin, margin + 5, fitText(words.heading, 5, width - 2 * margin), 5),
    group('drawing', drawing),
    group('title block', drawOrderBlock(words, fields, PAPERS[paper].height, voice)),
  ];
  return {
    ...PAPERS[paper],
    scale: 1,
    title,
    description: sayKnife('order.described', { heading: words.heading, title }, voice),
    items: moveItems(items, toMiddle(paper), 0),
  };
}

function drawOrderBlock(
  words: {
    readonly name: string;
    readonly title: string;
    readonly scale: string;
    readonly sheet: number;
    readonly of: number;
  },
  { number = '', revision = '', date = '', orderedBy = '' }: KnifeOrderFields,
  height: number,
  voice: InVoice,
): Item[] {
  const { width, margin } = ORDER_PAPER;
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
      fitText(
        sayKnife('order.caption', { name: words.name, scale: words.scale, units: unitsNote(voice) }, voice),
        WORDS,
        100,
      ),
      WORDS,
    ),
    ...sayKnife('order.marks', {}, voice)
      .split('\n')
      .map((line, i) =>
        // A caution that is cut short is worse than a small one.
        text(`marks ${i}`, 'quiet', left, top + 15.4 + i * 3.8, line, heightToFit(line, WORDS, 1.5, 100)),
      ),
    ...drawCheckBar(left, top + 26, voice, true),
  ];
  const rows = [
    { key: 'order', label: sayKnife('order.number', {}, voice), value: safeText(number) },
    { key: 'revision', label: sayKnife('order.revision', {}, voice), value: safeText(revision) },
    { key: 'date', label: sayKnife('order.date', {}, voice), value: safeText(date) },
    { key: 'ordered by', label: sayKnife('order.ordered-by', {}, voice), value: safeText(orderedBy) },
    {
      key: 'sheet',
      label: sayKnife('order.sheet', {}, voice),
      value: sayKnife('order.of', { sheet: words.sheet, of: words.of }, voice),
    },
  ];
  const start = middle + Math.max(...rows.map(({ label }) => textWidth(label, WORDS))) + 4;
  rows.forEach(({ key, label, value }, i) => {
    const base = top + 6 + i * 5.2;
    items.push(text(`${key} word`, 'quiet', middle, base, label, WORDS));
    if (value) items.push(text(key, 'text', start, base, fitText(value, WORDS, right - start), WORDS));
    else items.push(path(`${key} line`, 'thin', [stroke(start, base + 0.8, right, base + 0.8)]));
  });
  return items;
}
