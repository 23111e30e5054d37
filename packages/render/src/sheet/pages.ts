import type { Report } from '@fielded/core';
import type { Item } from '../scene.ts';
import { group, itemsBox, moveItems, text } from '../scene.ts';
import { fitText } from '../text/measure-text.ts';
import { drawCut } from '../views/cuts.ts';
import type { PlainView } from '../views/views.ts';
import { VIEWS } from '../views/views.ts';
import { scaleText } from '../words/lengths.ts';
import { SCALES } from './paper.ts';

/** Room for drawings on a sheet, mm. */
export interface Page {
  readonly width: number;
  readonly height: number;
}

/** A drawing with its caption, ready to be put on a sheet: its top left corner is (0, 0). */
export interface Block extends Page {
  readonly name: string;
  readonly scale: number;
  readonly items: readonly Item[];
}

const CAPTION = 3.5;
const CAPTION_SPACE = 9;
const LEAST_GAP = 8;
const MOST_GAP = 24;
const LEAST_BESIDE = 8;
const MOST_BESIDE = 30;

/** A view at a scale, broken where the page asks for it. For `cuts`, `index` is one cut, else the door. Throws RangeError where it does not fit. */
export function blockOf(report: Report, view: PlainView, index: number, scale: number, page: Page): Block {
  const block = makeBlock(report, view, index, scale, { width: page.width, height: page.height - CAPTION_SPACE });
  if (fits(block, page)) return block;
  const smaller = SCALES.find((other) => other < scale && fits(makeBlock(report, view, index, other, null), page));
  const advice = smaller === undefined ? 'Larger paper is needed.' : `At ${scaleText(smaller)} it would fit.`;
  throw new RangeError(`${block.name} does not fit the paper at ${scaleText(scale)}, even broken. ${advice}`);
}

/** A view at the largest scale at which it fits the page unbroken, but no larger than it is usually drawn. */
export function fitBlock(report: Report, view: PlainView, index: number, page: Page): Block {
  const largest = Math.max(...VIEWS[view].scales);
  for (const scale of SCALES) {
    if (scale > largest || VIEWS[view].extent(report, index) * scale > Math.max(page.width, page.height)) continue;
    const block = makeBlock(report, view, index, scale, null);
    if (fits(block, page)) return block;
  }
  throw new RangeError(`${VIEWS[view].name(report, index)} does not fit the paper at any scale`);
}

function fits(block: Block, page: Page): boolean {
  return block.width <= page.width + 1e-6 && block.height <= page.height + 1e-6;
}

function makeBlock(report: Report, view: PlainView, index: number, scale: number, room: Page | null): Block {
  const single = view === 'cuts';
  const drawing = single ? drawCut(report, index, scale, room) : VIEWS[view].draw(report, scale, index, room);
  const box = itemsBox(drawing)!;
  const name = single ? `Cut ${index + 1}` : VIEWS[view].name(report, index);
  const caption = `${name}  ${scaleText(scale)}`;
  const width = box.x1 - box.x0;
  const head = single
    ? []
    : [text('caption', 'quiet', 0, CAPTION, fitText(caption, CAPTION, Math.max(width, 60)), CAPTION)];
  const space = single ? 0 : CAPTION_SPACE;
  const headBox = head.length ? itemsBox(head)! : null;
  return {
    name,
    scale,
    width: Math.max(width, headBox?.x1 ?? 0),
    height: space + box.y1 - box.y0,
    items: [group(`${view} ${index}`, [...head, ...moveItems(drawing, -box.x0, space - box.y0)])],
  };
}

/** Puts blocks side by side while they fit the width, rows under each other, and on a further page what does not fit any more. */
export function flowBlocks(blocks: readonly Block[], page: Page): Block[][] {
  const pages: Block[][] = [];
  for (const block of blocks) {
    const last = pages[pages.length - 1];
    if (last && heightOf(rowsOf([...last, block], page)) <= page.height) last.push(block);
    else pages.push([block]);
  }
  return pages;
}

function rowsOf(blocks: readonly Block[], page: Page): Block[][] {
  const rows: Block[][] = [];
  for (const block of blocks) {
    const row = rows[rows.length - 1];
    const taken = row?.reduce((sum, { width }) => sum + width + LEAST_BESIDE, 0) ?? Infinity;
    if (taken + block.width <= page.width) row!.push(block);
    else rows.push([block]);
  }
  return rows;
}

function rowHeight(row: readonly Block[]): number {
  return Math.max(...row.map(({ height }) => height));
}

function heightOf(rows: readonly Block[][]): number {
  return rows.reduce((sum, row) => sum + rowHeight(row), 0) + (rows.length - 1) * LEAST_GAP;
}

/** Places the blocks of one page with the white between them evened out, rows in the middle of the width. */
export function placeBlocks(blocks: readonly Block[], page: Page, x: number, y: number): Item[] {
  const rows = rowsOf(blocks, page);
  const used = rows.reduce((sum, row) => sum + rowHeight(row), 0);
  const gap = Math.min(MOST_GAP, (page.height - used) / (rows.length + 1));
  // A little above the middle looks like the middle.
  let top = y + (Math.max(0, page.height - used - gap * (rows.length - 1)) / 2) * 0.6;
  return rows.flatMap((row) => {
    const widths = row.reduce((sum, { width }) => sum + width, 0);
    const beside = Math.min(MOST_BESIDE, (page.width - widths) / (row.length + 1));
    let left = x + (page.width - widths - beside * (row.length - 1)) / 2;
    const items = row.flatMap((block) => {
      const placed = moveItems(block.items, left, top);
      left += block.width + beside;
      return placed;
    });
    top += rowHeight(row) + gap;
    return items;
  });
}
