import type { KnifeReport, Language, Report } from '@fielded/core';
import { polygon } from '@fielded/geometry';
import { type Item, itemsBox, path, type Scene, text } from '../scene.ts';
import { textWidth, wrapText } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { sayKnife } from '../words/english/knife.ts';
import { groundTo, type InVoice, scaleText } from '../words/lengths.ts';
import { reliefNotes } from '../words/relief.ts';
import { type KnifeOrderFields, ORDER_PAPER, orderPage } from './order-frame.ts';
import { drawHead } from './order-head.ts';
import { arcRows, ordinateRows, type SheetStart, tableSheets } from './order-tables.ts';
import { drawEnlarged, drawLineKey, drawTemplate } from './order-template.ts';
import { type OrderLine, orderLines } from './order-words.ts';

export type { KnifeOrderFields } from './order-frame.ts';

/** An order for a knife and its limiter. */
export interface KnifeOrderSheet extends KnifeOrderFields {
  readonly knife: KnifeReport;
  readonly units: Report['units'];
  /** What its words are in; English unless told. */
  readonly language?: Language;
  /** The job's title, or the shop. */
  readonly title: string;
}

const WORDS = 2.5;
const LINE = 4.3;

/**
 * An order that a grinder can work from alone, on sheets of A4 at full size: template, enlarged outline, what is wanted in words;
 * the knife in its head over its ordinates and arcs; then the same for the limiter. What was assumed is marked to be confirmed.
 */
export function orderSheets(order: KnifeOrderSheet): Scene[] {
  const { knife, title } = order;
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
    tableSheets(tables, start).forEach((items, k) => {
      pages.push(k === 0 ? { name: over, scale, items } : { ...figures, items });
    });
  };
  pages.push({ name: sayKnife('order.knife', { cut }, order), scale: '1:1', items: knifePage(order) });
  const head = headPart(order);
  addFigures('knife', head, sayKnife('order.head', { head: safeText(knife.head) }, order), head.scale);
  if (knife.limiter) addFigures('limiter', limiterPart(order), say('order.limiter'), '1:1');
  const heading = sayKnife('order.heading', { count: knife.count, cut }, order);
  return pages.map(({ name, scale, items }, i) =>
    orderPage(items, { heading, name, title, scale, sheet: i + 1, of: pages.length }, order, order),
  );
}

/** The knife's own sheet: templates above, words below them, the head at the foot. */
function knifePage(order: KnifeOrderSheet): Item[] {
  const { knife } = order;
  const { width, margin } = ORDER_PAPER;
  const warning = knife.assumed ? drawAssumed(margin, margin + 9, order) : [];
  const top = margin + 11 + (knife.assumed ? ASSUMED_HEIGHT + 3 : 0);
  const template = drawTemplate(knife, order, 'knife', margin, top);
  const right = { x0: template.box.x1 + 8, y0: top, x1: width - margin, y1: top + 130 };
  const enlarged = drawEnlarged(knife, 'knife', right, order);
  let y = Math.max(template.box.y1, enlarged ? itemsBox(enlarged.items)!.y1 : 0) + 7;
  const key = drawLineKey(knife, 'knife', margin, y, order);
  const items: Item[] = [...warning, template.item, ...(enlarged?.items ?? []), ...key.items];
  y += key.height + 3;
  const put = (drawn: { items: Item[]; y: number }) => {
    items.push(...drawn.items);
    y = drawn.y;
  };
  put(drawLines(order, orderLines(knife, order), margin, y, width - 2 * margin));
  const notes = [...reliefNotes(knife, order), ...knife.warnings.map(({ message }) => safeText(message))];
  put(drawNotes(notes, margin, y + 1, width - 2 * margin));
  return items;
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
  const { knife } = order;
  const { width, margin } = ORDER_PAPER;
  const top = margin + 11;
  const template = drawTemplate(knife, order, 'limiter', margin, top);
  const room = { x0: template.box.x1 + 8, y0: top, x1: width - margin, y1: top + 130 };
  const enlarged = drawEnlarged(knife, 'limiter', room, order);
  const y = Math.max(template.box.y1, enlarged ? itemsBox(enlarged.items)!.y1 : 0) + 7;
  const key = drawLineKey(knife, 'limiter', margin, y, order);
  const listed = drawLines(order, limiterLines(order), margin, y + key.height + 3, width - 2 * margin);
  return {
    items: [template.item, ...(enlarged?.items ?? []), ...key.items, ...listed.items],
    y: listed.y + 4,
  };
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
    { key: 'wanted', what: what('wanted.count'), wanted: sayKnife('wanted.count.limiter', { count }, order) },
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
  | 'wanted.size'
  | 'wanted.set-back'
  | 'wanted.origin'
  | 'wanted.origin.is';

/** The order's list, each line marked that has to be confirmed; `y` is that of the next line. */
function drawLines(
  voice: InVoice,
  lines: readonly OrderLine[],
  x: number,
  y: number,
  room: number,
): { items: Item[]; y: number } {
  const column = Math.max(...lines.map(({ what }) => textWidth(what, WORDS))) + 4;
  const items: Item[] = [];
  let at = y;
  lines.forEach(({ key, what, wanted, confirm = false }) => {
    const words = confirm ? sayKnife('order.confirm', { wanted }, voice) : wanted;
    items.push(text(`line ${key}`, 'quiet', x, at, what, WORDS));
    wrapText(words, WORDS, room - column).forEach((part, i) => {
      items.push(text(`${key} ${i}`, confirm ? 'trouble-text' : 'text', x + column, at, part, WORDS));
      at += LINE;
    });
  });
  return { items, y: at };
}

function drawNotes(notes: readonly string[], x: number, y: number, room: number): { items: Item[]; y: number } {
  let at = y;
  const items = notes.flatMap((note, i) =>
    wrapText(note, WORDS, room).map((words, k) => {
      const item = text(`note ${i} ${k}`, 'text', x, at, words, WORDS);
      at += LINE;
      return item;
    }),
  );
  return { items, y: at };
}
