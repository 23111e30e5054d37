import type { KnifeReport, Language, Report } from '@fielded/core';
import { polygon } from '@fielded/geometry';
import { type OfficePaper, PAPERS } from '../paper.ts';
import { type Item, itemsBox, moveItems, path, type Scene, text } from '../scene.ts';
import { textWidth } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { sayKnife } from '../words/english/knife.ts';
import { groundTo, type InVoice, scaleText } from '../words/lengths.ts';
import { reliefNotes } from '../words/relief.ts';
import { type KnifeOrderFields, ORDER_PAPER, orderPage } from './order-frame.ts';
import { drawHead } from './order-head.ts';
import { arcRows, ordinateRows, type SheetStart, tableSheets } from './order-tables.ts';
import { drawEnlarged, drawLineKey, drawTemplate } from './order-template.ts';
import { type OrderLine, orderLines } from './order-words.ts';
import { errorBlocks, heightOf, lineBlocks, noteBlocks, placeBlocks, stackBlocks } from './word-blocks.ts';

export type { KnifeOrderFields } from './order-frame.ts';

/** An order for a knife and its limiter. */
export interface KnifeOrderSheet extends KnifeOrderFields {
  readonly knife: KnifeReport;
  readonly units: Report['units'];
  /** What its words are in; English unless told. */
  readonly language?: Language;
  /** The job's title, or the shop. */
  readonly title: string;
  /** What it is printed on; A4 unless told. */
  readonly paper?: OfficePaper;
}

/**
 * An order that a grinder can work from alone, on sheets of paper at full size: template, enlarged outline, what is wanted in words;
 * the knife in its head over its ordinates and arcs; then the same for the limiter. What was assumed is marked to be confirmed.
 */
export function orderSheets(order: KnifeOrderSheet): Scene[] {
  const { knife, title, paper = 'a4' } = order;
  const { height } = PAPERS[paper];
  const say = (key: OrderWords) => sayKnife(key, {}, order);
  const cut = safeText(knife.cut);
  const pages: { name: string; scale: string; items: readonly Item[] }[] = [];
  // The knife in its head stands over the knife's figures, the limiter's template over its own.
  const addFigures = (part: 'knife' | 'limiter', start: SheetStart, over: string, scale: string) => {
    const of = part === 'limiter' ? knife.limiter! : knife;
    const tables = [
      { title: say('order.ordinates'), more: say('order.ordinates.more'), table: ordinateRows(of, order), blocks: 3 },
      { title: say('order.arcs'), more: say('order.arcs.more'), table: arcRows(of.outline, order), blocks: 1 },
    ];
    const figures = { name: say(`order.figures.${part}`), scale: say('order.figures') };
    tableSheets(tables, height, start).forEach((items, k) => {
      pages.push(k === 0 ? { name: over, scale, items } : { ...figures, items });
    });
  };
  const own = sayKnife('order.knife', { cut }, order);
  knifeSheets(order, height).forEach((items, k) => {
    pages.push({ name: own, scale: k === 0 ? '1:1' : say('order.figures'), items });
  });
  const head = headPart(order);
  addFigures('knife', head, sayKnife('order.head', { head: safeText(knife.head) }, order), head.scale);
  if (knife.limiter) addFigures('limiter', limiterPart(order), say('order.limiter'), '1:1');
  const { count } = knife;
  const heading =
    count === 1 ? sayKnife('order.heading.one', { cut }, order) : sayKnife('order.heading', { count, cut }, order);
  return pages.map(({ name, scale, items }, i) =>
    orderPage(items, { heading, name, title, scale, sheet: i + 1, of: pages.length }, order, paper, order),
  );
}

/** The knife's own sheet, `height` mm high: templates above, words below them; those that find no room go on a further sheet. */
function knifeSheets(order: KnifeOrderSheet, height: number): Item[][] {
  const { knife } = order;
  const { width, margin, foot } = ORDER_PAPER;
  const bottom = height - foot;
  const warning = knife.assumed ? drawAssumed(margin, margin + 9, order) : [];
  const top = margin + 11 + (knife.assumed ? ASSUMED_HEIGHT + 3 : 0);
  const errors = knife.warnings.filter(({ severity }) => severity === 'error');
  const cautions = knife.warnings.filter(({ severity }) => severity !== 'error');
  const notes = [...reliefNotes(knife, order), ...cautions.map(({ message }) => safeText(message))];
  const words = [
    ...errorBlocks(order, errors, margin, width - 2 * margin),
    ...lineBlocks(order, orderLines(knife, order), margin, width - 2 * margin),
    ...noteBlocks(notes, margin, width - 2 * margin),
  ];
  const { items, y } = templatePart(order, 'knife', top, bottom - heightOf(words));
  return stackBlocks(words, { items: [...warning, ...items], y }, bottom);
}

const UNDER_TEMPLATE = 7;
const UNDER_KEY = 3;
/** The most room in height for an enlarged outline, mm. */
const MOST_ENLARGED = 130;

/**
 * The template from `top` down, the outline enlarged beside it, their key of lines below. The outline is smaller where the words
 * under them, which begin at `before` at the latest, would else go on another sheet.
 */
function templatePart(
  order: KnifeOrderSheet,
  part: 'knife' | 'limiter',
  top: number,
  before: number = Number.POSITIVE_INFINITY,
): SheetStart {
  const { knife } = order;
  const { width, margin } = ORDER_PAPER;
  const template = drawTemplate(knife, order, part, margin, top);
  const key = drawLineKey(knife, part, margin, 0, order);
  const left = before - top - UNDER_TEMPLATE - key.height - UNDER_KEY;
  const enlarge = (tall: number) =>
    drawEnlarged(knife, part, { x0: template.box.x1 + 8, y0: top, x1: width - margin, y1: top + tall }, order);
  const enlarged = enlarge(Math.min(MOST_ENLARGED, left)) ?? enlarge(MOST_ENLARGED);
  const below = Math.max(template.box.y1, enlarged ? itemsBox(enlarged.items)!.y1 : 0) + UNDER_TEMPLATE;
  return {
    items: [template.item, ...(enlarged?.items ?? []), ...moveItems(key.items, 0, below)],
    y: below + key.height + UNDER_KEY,
  };
}

/** The knife in its head, at the top of a sheet. */
function headPart(order: KnifeOrderSheet): SheetStart & { readonly scale: string } {
  const { knife } = order;
  const { width, margin } = ORDER_PAPER;
  const { items, height, scale } = drawHead(knife, order, margin, margin + 12, width - 2 * margin);
  return { items, y: margin + 12 + height + 8, scale: scaleText(scale, order) };
}

const ASSUMED_HEIGHT = 8;

/** The line that says what is assumed, in a heavy frame over the template, to be seen on a black and white print too. */
function drawAssumed(x: number, y: number, voice: InVoice): Item[] {
  const words = sayKnife('order.assumed', {}, voice);
  const frame = polygon([
    [x, y],
    [x + textWidth(words, 3.5) + 6, y],
    [x + textWidth(words, 3.5) + 6, y + ASSUMED_HEIGHT],
    [x, y + ASSUMED_HEIGHT],
  ]);
  return [path('assumed frame', 'outline', [frame]), text('assumed', 'text', x + 3, y + 5.6, words, 3.5)];
}

/** The limiter's template and what is wanted of it, at the top of a sheet. */
function limiterPart(order: KnifeOrderSheet): SheetStart {
  const { width, margin } = ORDER_PAPER;
  const { items, y } = templatePart(order, 'limiter', margin + 11);
  const listed = lineBlocks(order, limiterLines(order), margin, width - 2 * margin);
  return { items: [...items, ...placeBlocks(listed, y)], y: y + heightOf(listed) + 4 };
}

/** What is wanted of the limiter. */
function limiterLines(order: KnifeOrderSheet): OrderLine[] {
  const { count, limiter } = order.knife;
  const say = (mm: number) => `${groundTo(mm, order)} ${order.units}`;
  const { length, width, gap } = limiter!;
  const size = { length: say(length), width: say(width) };
  const back = { radius: say(gap.least), side: say(gap.side) };
  const what = (key: OrderWords) => sayKnife(key, {}, order);
  return [
    {
      key: 'wanted',
      what: what('wanted.count'),
      wanted: count === 1 ? what('wanted.count.limiter.one') : sayKnife('wanted.count.limiter', { count }, order),
    },
    { key: 'size', what: what('wanted.size'), wanted: sayKnife('wanted.size.is', size, order) },
    { key: 'set back', what: what('wanted.set-back'), wanted: sayKnife('wanted.set-back.is', back, order) },
    { key: 'origin', what: what('wanted.origin'), wanted: what('wanted.origin.is') },
  ];
}

/** The words of an order that name no figure. */
type OrderWords =
  | 'order.ordinates'
  | 'order.ordinates.more'
  | 'order.arcs'
  | 'order.arcs.more'
  | 'order.figures'
  | 'order.figures.knife'
  | 'order.figures.limiter'
  | 'order.limiter'
  | 'wanted.count'
  | 'wanted.count.limiter.one'
  | 'wanted.size'
  | 'wanted.set-back'
  | 'wanted.origin'
  | 'wanted.origin.is';
