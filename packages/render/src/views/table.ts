import { stroke } from '../geometry/stroke.ts';
import type { GroupItem, Item } from '../scene.ts';
import { group, path, text } from '../scene.ts';
import { textWidth } from '../text/measure-text.ts';

/** A table of figures, each column with a heading; cells are text as it stands. */
export interface FigureTable {
  readonly headings: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

const HEIGHT = 2.5;
const ROW = 4.4;
const COLUMN_GAP = 5;
const BLOCK_GAP = 9;

/**
 * A table with its heading's baseline at (x, y), figures set right; after `mostRows` rows it goes on in a block beside.
 */
export function drawTable(key: string, table: FigureTable, x: number, y: number, mostRows: number): GroupItem {
  const blocks = Math.max(1, Math.ceil(table.rows.length / mostRows));
  const perBlock = Math.ceil(table.rows.length / blocks);
  const widths = table.headings.map((heading, column) =>
    Math.max(...[heading, ...table.rows.map((row) => row[column] ?? '')].map((cell) => textWidth(cell, HEIGHT))),
  );
  const items: Item[] = [];
  let left = x;
  for (let block = 0; block < blocks; block++) {
    const rows = table.rows.slice(block * perBlock, (block + 1) * perBlock);
    let right = left;
    table.headings.forEach((heading, column) => {
      right += widths[column]! + (column === 0 ? 0 : COLUMN_GAP);
      items.push(text(`heading ${block} ${column}`, 'quiet', right, y, heading, HEIGHT, 'end'));
      rows.forEach((row, i) => {
        const cell = row[column] ?? '';
        if (cell)
          items.push(text(`cell ${block} ${i} ${column}`, 'text', right, y + 1.8 + (i + 1) * ROW, cell, HEIGHT, 'end'));
      });
    });
    const rule = stroke(left, y + 1.6, right, y + 1.6);
    items.push(path(`rule ${block}`, 'thin', [rule]));
    left = right + BLOCK_GAP;
  }
  return group(key, items);
}

/** How tall a table of so many rows is, from its heading's baseline. */
export function tableHeight(rows: number): number {
  return 1.8 + rows * ROW;
}
