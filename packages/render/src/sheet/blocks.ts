import type { Report } from '@fielded/core';
import { layWithin } from '../dimension/lay-within.ts';
import type { Page } from '../paper.ts';
import { SCALES } from '../paper.ts';
import type { Item } from '../scene.ts';
import { group, itemsBox, moveItems, text } from '../scene.ts';
import { wrapTitle } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { drawCut } from '../views/cuts.ts';
import { sketchPanel } from '../views/panel.ts';
import type { PlainView } from '../views/views.ts';
import { VIEWS } from '../views/views.ts';
import { saySheet } from '../words/english/sheet.ts';
import { scaleText } from '../words/lengths.ts';

/** What is drawn in one place of a sheet: a view of the door or, for `cuts`, of the cut with this number from 0. */
export interface BlockSubject {
  readonly view: PlainView;
  readonly index: number;
  /** Which of the door's kinds of panels, from 0. */
  readonly panel?: number;
  /** What stands under the caption, such as how many are made and of which doors; '' for nothing. */
  readonly count: string;
  /** What it is called instead of the view's own name, and what a sheet that begins with it is called. */
  readonly name?: string;
  readonly title?: string;
}

/** A drawing with its caption, ready to be put on a sheet: its top left corner is (0, 0). */
export interface SheetBlock extends Page {
  readonly name: string;
  /** What a sheet that begins with it is called. */
  readonly title: string;
  readonly scale: number;
  readonly items: readonly Item[];
}

const CAPTION = 3.5;
const COUNT = 2.5;
const CAPTION_LINE = 5;
const COUNT_LINE = 4;
const UNDER_CAPTION = 4;
const UNDER_COUNT = 1;
/** A caption above a narrow drawing is as wide as this, mm. */
const LEAST_WIDTH = 60;

/** A view at a scale, broken where the page asks for it. Throws RangeError where it does not fit. */
export function blockOf(report: Report, subject: BlockSubject, scale: number, page: Page): SheetBlock {
  const above = captionOf(report, subject, scale, LEAST_WIDTH).height;
  const block = makeBlock(report, subject, scale, { width: page.width, height: page.height - above });
  if (fits(block, page)) return block;
  const smaller = SCALES.find((other) => other < scale && fits(makeBlock(report, subject, other, null), page));
  const advice = smaller === undefined ? 'Larger paper is needed.' : `At ${scaleText(smaller)} it would fit.`;
  throw new RangeError(`${block.name} does not fit the paper at ${scaleText(scale)}, even broken. ${advice}`);
}

/**
 * A view at the largest of its scales above `over` at which it fits the page unbroken; null where none fits. `drawn` keeps by
 * their scales the blocks drawn on the way, for the next page that is tried.
 */
export function findBlock(
  report: Report,
  subject: BlockSubject,
  page: Page,
  drawn: Map<number, SheetBlock> = new Map(),
  over = 0,
): SheetBlock | null {
  const { view, index } = subject;
  const { scales, least, extent } = VIEWS[view];
  const largest = Math.max(...scales);
  for (const scale of SCALES) {
    if (scale <= over || scale > largest || scale < least) continue;
    if (extent(report, index) * scale > Math.max(page.width, page.height)) continue;
    const block = drawn.get(scale) ?? makeBlock(report, subject, scale, null);
    drawn.set(scale, block);
    if (fits(block, page)) return block;
  }
  return null;
}

/** The same, broken at its smallest scale where no scale fits. Throws RangeError where even that is too large. */
export function fitBlock(report: Report, subject: BlockSubject, page: Page): SheetBlock {
  const found = findBlock(report, subject, page);
  if (found !== null) return found;
  const { name, least } = VIEWS[subject.view];
  if (least > SCALES.at(-1)!) return blockOf(report, subject, least, page);
  throw new RangeError(`${name(report, subject.index)} does not fit the paper at any scale`);
}

function fits(block: SheetBlock, page: Page): boolean {
  return block.width <= page.width + 1e-6 && block.height <= page.height + 1e-6;
}

function makeBlock(report: Report, subject: BlockSubject, scale: number, room: Page | null): SheetBlock {
  const { view, index } = subject;
  const drawing = drawSubject(report, subject, scale, room);
  const box = itemsBox(drawing)!;
  const width = box.x1 - box.x0;
  const { name, title } = namesOf(report, subject);
  const head = captionOf(report, subject, scale, Math.max(width, LEAST_WIDTH));
  return {
    name,
    title,
    scale,
    width: Math.max(width, head.items.length ? itemsBox(head.items)!.x1 : 0),
    height: head.height + box.y1 - box.y0,
    items: [group(`${view} ${index}`, [...head.items, ...moveItems(drawing, -box.x0, head.height - box.y0)])],
  };
}

function drawSubject(
  report: Report,
  { view, index, panel = 0 }: BlockSubject,
  scale: number,
  room: Page | null,
): Item[] {
  if (view === 'cuts') return drawCut(report, index, scale, room);
  if (panel > 0) return layWithin(sketchPanel(report, scale, index, panel), room);
  return VIEWS[view].draw(report, scale, index, room);
}

/** What a block is called, and what a sheet that begins with it is called. A cut has its number and the job's title. */
function namesOf(report: Report, { view, index, name, title }: BlockSubject): { name: string; title: string } {
  if (view !== 'cuts')
    return { name: name ?? VIEWS[view].name(report, index), title: title ?? VIEWS[view].title(report, index) };
  const number = { job: safeText(report.title), cut: index + 1 };
  return { name: name ?? saySheet('sheet.cut', number, report), title: title ?? saySheet('title.cut', number, report) };
}

/** Name, scale and count above a drawing, and how much of the block's height they take; a cut brings its own heading. */
function captionOf(
  report: Report,
  subject: BlockSubject,
  scale: number,
  room: number,
): { readonly items: readonly Item[]; readonly height: number } {
  if (subject.view === 'cuts') return { items: [], height: 0 };
  const { name } = namesOf(report, subject);
  const caption = wrapTitle(name, scaleText(scale, report), CAPTION, room);
  const count = subject.count ? wrapTitle(subject.count, '', COUNT, room) : [];
  const under = CAPTION + (caption.length - 1) * CAPTION_LINE;
  const items = [
    ...caption.map((words, i) => text(`caption ${i}`, 'quiet', 0, CAPTION + i * CAPTION_LINE, words, CAPTION)),
    ...count.map((words, i) => text(`count ${i}`, 'text', 0, under + CAPTION_LINE + i * COUNT_LINE, words, COUNT)),
  ];
  const height = caption.length * CAPTION_LINE + UNDER_CAPTION;
  return { items, height: count.length ? height + count.length * COUNT_LINE + UNDER_COUNT : height };
}
