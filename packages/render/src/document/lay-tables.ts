import { stroke } from '../geometry/stroke.ts';
import { type Item, moveItems, path, text } from '../scene.ts';
import type { Cell, Table } from './document.ts';
import { BODY, HEADING, LEADING, type Piece, space, type TextRole, wrap } from './page-text.ts';

/** Room between columns, mm. */
export const COLUMN_GAP = 4;
/** Room above and under the words of a table's row together, mm. */
const ROW_ROOM = 2.2;
const DENSE_ROW = 1.2;

/** A table as pieces: a piece for each row, which repeats the head where it begins a page. */
export function layTable(table: Table, room: number): Piece[] {
  const whole = table.shares.reduce((sum, share) => sum + share, 0);
  const widths = table.shares.map((share) => (share / whole) * room);
  const lay = (row: readonly Cell[], role: TextRole, size = BODY) =>
    layRow(row, widths, table.align, role, table.dense ? DENSE_ROW : ROW_ROOM, size);
  const head = lay(table.head, 'quiet');
  const body = table.rows.map((row) => ({ ...lay(row, 'text'), repeat: head }));
  const foot = table.foot.map((row, i) => ({ ...lay(row, 'text', i === table.total ? HEADING : BODY), repeat: head }));
  return [
    { ...head, keep: body[0]?.height ?? 0 },
    ...body,
    ...(foot.length > 0 ? [space(1.5), ...foot] : []),
    space(3),
  ];
}

function layRow(
  cells: readonly Cell[],
  widths: readonly number[],
  align: readonly ('start' | 'end')[],
  role: TextRole,
  padding: number,
  size: number,
): Piece {
  const laid = cells.map((cell, i) =>
    typeof cell === 'string' ? wrap(cell, size, roomFor(cells, widths, align, i)) : cell,
  );
  const heights = laid.map((cell) => ('items' in cell ? cell.height : Math.max(1, cell.length) * size * LEADING));
  const height = Math.max(...heights) + padding;
  return {
    height,
    draw: (y, key) => {
      let x = 0;
      const items = laid.flatMap((cell, i): Item[] => {
        const left = x;
        x += widths[i]!;
        if ('items' in cell)
          return [{ kind: 'group', key: `${key} cell ${i}`, items: moveItems(cell.items, left, y + 1) }];
        const end = align[i] === 'end';
        return cell.map((line, k) =>
          text(
            `${key} cell ${i} ${k}`,
            role,
            end ? x - (i === laid.length - 1 ? 0 : COLUMN_GAP) : left,
            y + padding / 2 - 0.1 + size * 1.3 + k * size * LEADING,
            line,
            size,
            end ? 'end' : 'start',
          ),
        );
      });
      const rule = stroke(0, y + height, x, y + height);
      return [...items, path(`${key} rule`, 'grain', [rule])];
    },
  };
}

/** Width that a cell's words have, mm: one set to the end of its column takes empty columns before it too, as a sum does. */
function roomFor(
  cells: readonly Cell[],
  widths: readonly number[],
  align: readonly ('start' | 'end')[],
  at: number,
): number {
  let room = widths[at]! - COLUMN_GAP;
  if (align[at] === 'end') for (let i = at - 1; i > 0 && cells[i] === ''; i--) room += widths[i]!;
  return room;
}
