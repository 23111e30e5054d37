import type { KnifeReport, Report } from '@fielded/core';
import { polygon } from '@fielded/geometry';
import { type Item, itemsBox, path, type Scene, text } from '../scene.ts';
import { textWidth, wrapText } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { scaleText } from '../words/lengths.ts';
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
  const { knife, units, title } = order;
  const ordinates = 'Ordinates: s along the tip line, t back from it; chords within 0.05 mm';
  const arcs = 'Lines and arcs in the order of the edge';
  const pages: { name: string; scale: string; items: readonly Item[] }[] = [];
  // The knife in its head stands over the knife's figures, the limiter's template over its own.
  const addFigures = (part: 'knife' | 'limiter', start: SheetStart, over: string, scale: string) => {
    const of = part === 'limiter' ? knife.limiter! : knife;
    const tables = [
      { title: ordinates, table: ordinateRows(of, units), blocks: 3 },
      { title: arcs, table: arcRows(of.outline, units), blocks: 1 },
    ];
    const figures = `figures of the ${part}`;
    tableSheets(tables, start).forEach((items, k) => {
      pages.push(k === 0 ? { name: `${over}, figures`, scale, items } : { name: figures, scale: 'figures', items });
    });
  };
  pages.push({ name: `knife for the ${safeText(knife.cut)}`, scale: '1:1', items: knifePage(order) });
  const head = headPart(order);
  addFigures('knife', head, `knife in the head ${safeText(knife.head)}`, head.scale);
  if (knife.limiter) addFigures('limiter', limiterPart(order), 'limiter', '1:1');
  const heading = `Order: ${knife.count} knives for the ${safeText(knife.cut)}`;
  return pages.map(({ name, scale, items }, i) =>
    orderPage(items, { heading, name, title, scale, sheet: i + 1, of: pages.length }, order, units),
  );
}

/** The knife's own sheet: templates above, words below them, the head at the foot. */
function knifePage({ knife, units, title }: KnifeOrderSheet): Item[] {
  const { width, margin } = ORDER_PAPER;
  const warning = knife.assumed ? drawAssumed(margin, margin + 9) : [];
  const top = margin + 11 + (knife.assumed ? ASSUMED_HEIGHT + 3 : 0);
  const template = drawTemplate(knife, units, title, 'knife', margin, top);
  const right = { x0: template.box.x1 + 8, y0: top, x1: width - margin, y1: top + 130 };
  const enlarged = drawEnlarged(knife, 'knife', right);
  let y = Math.max(template.box.y1, enlarged ? itemsBox(enlarged.items)!.y1 : 0) + 7;
  const key = drawLineKey(knife, 'knife', margin, y);
  const items: Item[] = [...warning, template.item, ...(enlarged?.items ?? []), ...key.items];
  y += key.height + 3;
  const put = (drawn: { items: Item[]; y: number }) => {
    items.push(...drawn.items);
    y = drawn.y;
  };
  put(drawLines(orderLines(knife, units), margin, y, width - 2 * margin));
  const notes = [...reliefNotes(knife, units), ...knife.warnings.map(({ message }) => safeText(message))];
  put(drawNotes(notes, margin, y + 1, width - 2 * margin));
  return items;
}

/** The knife in its head, at the top of a sheet. */
function headPart({ knife, units }: KnifeOrderSheet): SheetStart & { readonly scale: string } {
  const { width, margin } = ORDER_PAPER;
  const { items, height, scale } = drawHead(knife, units, margin, margin + 12, width - 2 * margin);
  return { items, y: margin + 12 + height + 8, scale: scaleText(scale) };
}

const ASSUMED = 'Hand ASSUMED: have it confirmed before anything is ground.';
const ASSUMED_HEIGHT = 8;

/** What nobody said stands in a heavy frame over the template, as plain on a black and white print. */
function drawAssumed(x: number, y: number): Item[] {
  const frame = polygon([
    [x, y],
    [x + textWidth(ASSUMED, 3.5) + 6, y],
    [x + textWidth(ASSUMED, 3.5) + 6, y + ASSUMED_HEIGHT],
    [x, y + ASSUMED_HEIGHT],
  ]);
  return [path('assumed frame', 'outline', [frame]), text('assumed', 'text', x + 3, y + 5.6, ASSUMED, 3.5)];
}

/** The limiter's template and what is wanted of it, at the top of a sheet. */
function limiterPart({ knife, units, title }: KnifeOrderSheet): SheetStart {
  const { width, margin } = ORDER_PAPER;
  const top = margin + 11;
  const limiter = knife.limiter!;
  const template = drawTemplate(knife, units, title, 'limiter', margin, top);
  const enlarged = drawEnlarged(knife, 'limiter', {
    x0: template.box.x1 + 8,
    y0: top,
    x1: width - margin,
    y1: top + 130,
  });
  const y = Math.max(template.box.y1, enlarged ? itemsBox(enlarged.items)!.y1 : 0) + 7;
  const key = drawLineKey(knife, 'limiter', margin, y);
  const say = (mm: number) => (units === 'mm' ? `${mm.toFixed(2)} mm` : `${(mm / 25.4).toFixed(4)} in`);
  const lines: OrderLine[] = [
    { what: 'wanted', wanted: `${knife.count} alike, one in front of each knife` },
    { what: 'size', wanted: `${say(limiter.length)} along t, ${say(limiter.width)} along s` },
    {
      what: 'set back',
      wanted: `${say(limiter.gap.least)} on the radius; ${say(limiter.gap.side)} clear of steep walls sideways`,
    },
    { what: 'origin', wanted: "the knife's own tip: s and t are measured from it" },
  ];
  const listed = drawLines(lines, margin, y + key.height + 3, width - 2 * margin);
  return {
    items: [template.item, ...(enlarged?.items ?? []), ...key.items, ...listed.items],
    y: listed.y + 4,
  };
}

/** The order's list; what has to be confirmed is marked. */
function drawLines(lines: readonly OrderLine[], x: number, y: number, room: number): { items: Item[]; y: number } {
  const column = Math.max(...lines.map(({ what }) => textWidth(what, WORDS))) + 4;
  const items: Item[] = [];
  let at = y;
  lines.forEach(({ what, wanted, confirm = false }) => {
    const words = confirm ? `${wanted}: ASSUMED, confirm it before grinding` : wanted;
    items.push(text(`line ${what}`, 'quiet', x, at, what, WORDS));
    wrapText(words, WORDS, room - column).forEach((part, i) => {
      items.push(text(`${what} ${i}`, confirm ? 'trouble-text' : 'text', x + column, at, part, WORDS));
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
