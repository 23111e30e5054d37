import type { Page } from '../paper.ts';
import type { Item } from '../scene.ts';
import { moveItems } from '../scene.ts';
import type { SheetBlock } from './blocks.ts';

const LEAST_GAP = 8;
const MOST_GAP = 24;
const LEAST_BESIDE = 8;
const MOST_BESIDE = 30;

/** What stands on one page: drawn, or to be drawn when the page is asked for. */
export type PageBlocks = readonly SheetBlock[] | (() => readonly SheetBlock[]);

/** The blocks of a page, drawn now if they are not yet. */
export function blocksOf(page: PageBlocks): readonly SheetBlock[] {
  return typeof page === 'function' ? page() : page;
}

/** Puts blocks side by side while they fit the width, in rows under each other, in their order; those that do not fit go on further pages. */
export function flowBlocks(blocks: readonly SheetBlock[], page: Page): SheetBlock[][] {
  const pages: SheetBlock[][] = [];
  for (const block of blocks) {
    const last = pages[pages.length - 1];
    if (last && heightOf(rowsOf([...last, block], page)) <= page.height) last.push(block);
    else pages.push([block]);
  }
  return pages;
}

/** How many of the last pages are searched for room: all of them would take the square of their number. */
const MOST_OPEN = 40;

/** Puts blocks on as few pages as it finds, after those of `begun`: the tallest first, each on the first page that has room for it. */
export function packBlocks(
  blocks: readonly SheetBlock[],
  page: Page,
  begun: readonly SheetBlock[][] = [],
): SheetBlock[][] {
  const pages = begun.map((placed) => [...placed]);
  for (const block of [...blocks].sort((a, b) => b.height - a.height)) {
    const open = pages.slice(-MOST_OPEN).find((placed) => heightOf(rowsOf([...placed, block], page)) <= page.height);
    if (open) open.push(block);
    else pages.push([block]);
  }
  return pages;
}

function rowsOf(blocks: readonly SheetBlock[], page: Page): SheetBlock[][] {
  const rows: SheetBlock[][] = [];
  for (const block of blocks) {
    const row = rows[rows.length - 1];
    const taken = row?.reduce((sum, { width }) => sum + width + LEAST_BESIDE, 0) ?? Infinity;
    if (taken + block.width <= page.width) row!.push(block);
    else rows.push([block]);
  }
  return rows;
}

function rowHeight(row: readonly SheetBlock[]): number {
  return Math.max(...row.map(({ height }) => height));
}

function heightOf(rows: readonly SheetBlock[][]): number {
  return rows.reduce((sum, row) => sum + rowHeight(row), 0) + (rows.length - 1) * LEAST_GAP;
}

/** Places the blocks of one page with the white between them evened out, rows in the middle of the width. */
export function placeBlocks(blocks: readonly SheetBlock[], page: Page, x: number, y: number): Item[] {
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
