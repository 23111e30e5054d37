import type { KnifeReport, Report } from '@fielded/core';
import { type Curve, readReportPath } from '@fielded/geometry';
import { type Item, text } from '../scene.ts';
import { drawTable, type FigureTable, tableHeight } from '../views/table.ts';
import { ORDER_PAPER } from './order-frame.ts';

const ROW = 4.4;

/** Figures of an order as they are ground to. */
function show(mm: number, units: Report['units']): string {
  return (units === 'mm' ? mm.toFixed(2) : (mm / 25.4).toFixed(4)).replace(/^-(0\.?0*)$/, '$1').replace('-', '−');
}

/** Ordinates in the order of the edge, numbered. */
export function ordinateRows(
  part: Pick<KnifeReport, 'ordinates'> | NonNullable<KnifeReport['limiter']>,
  units: Report['units'],
): FigureTable {
  return {
    headings: ['no.', 'along s', 'back t'],
    rows: part.ordinates.map(({ s, t }, i) => [String(i + 1), show(s, units), show(t, units)]),
  };
}

/** The outline's lines and arcs, in the order of the edge, with the arcs' radii and centres. */
export function arcRows(outline: string, units: Report['units']): FigureTable {
  const curves = readReportPath(outline).flat();
  const inOrder =
    curves[0]!.x0 <= curves[curves.length - 1]!.x1
      ? curves
      : [...curves].reverse().map((c) => ({ ...c, x0: c.x1, y0: c.y1, x1: c.x0, y1: c.y0 }));
  return {
    headings: ['piece', 'from s', 'from t', 'to s', 'to t', 'radius', 'centre s', 'centre t'],
    rows: inOrder.map((c, i) => [
      String(i + 1),
      ...[c.x0, c.y0, c.x1, c.y1].map((mm) => show(mm, units)),
      ...(isStraight(c) ? ['line', '', ''] : [c.r, c.cx, c.cy].map((mm) => show(mm, units))),
    ]),
  };
}

/** An arc that bows less than this, mm, is ground as a line. */
const STRAIGHT = 0.002;

function isStraight({ x0, y0, x1, y1, r, turn }: Curve): boolean {
  return turn === 0 || Math.hypot(x1 - x0, y1 - y0) ** 2 / (8 * r) < STRAIGHT;
}

/** What stands on the first sheet already, and where it ends, mm. */
export interface SheetStart {
  readonly items: readonly Item[];
  readonly y: number;
}

/** Tables over as many sheets as they take, below what stands on the first: each a list of items. */
export function tableSheets(
  tables: readonly { readonly title: string; readonly table: FigureTable; readonly blocks: number }[],
  start?: SheetStart,
): Item[][] {
  const { height, margin, foot } = ORDER_PAPER;
  const top = margin + 16;
  const most = height - foot - 8;
  const sheets: Item[][] = [];
  let items: Item[] = [...(start?.items ?? [])];
  let y = start?.y ?? top;
  const turn = () => {
    sheets.push(items);
    items = [];
    y = top;
  };
  tables.forEach(({ title, table, blocks }, k) => {
    let from = 0;
    while (from < table.rows.length) {
      if (most - y < 14 + 4 * ROW) turn();
      const perBlock = Math.floor((most - y - 10) / ROW);
      const rows = table.rows.slice(from, from + perBlock * blocks);
      const each = Math.max(1, Math.ceil(rows.length / blocks));
      items.push(
        text(`table ${k} ${from}`, 'text', margin, y, from === 0 ? title : `${title.split(':')[0]}, continued`, 3.5),
      );
      items.push(drawTable(`rows ${k} ${from}`, { headings: table.headings, rows }, margin, y + 6, each));
      y += 6 + tableHeight(each) + 10;
      from += rows.length;
    }
  });
  turn();
  return sheets;
}
