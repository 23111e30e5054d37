import type { KnifeReport } from '@fielded/core';
import { type Curve, readReportPath, reverseCurves } from '@fielded/geometry';
import { type Item, text } from '../scene.ts';
import { drawTable, type FigureTable, tableHeight } from '../views/table.ts';
import { sayKnife } from '../words/english/knife.ts';
import { groundTo, type InVoice } from '../words/lengths.ts';
import { ORDER_PAPER } from './order-frame.ts';

const ROW = 4.4;

/** Ordinates in the order of the edge, numbered. */
export function ordinateRows(
  part: Pick<KnifeReport, 'ordinates'> | NonNullable<KnifeReport['limiter']>,
  voice: InVoice,
): FigureTable {
  const say = (heading: 'number' | 'along' | 'back') => sayKnife(`table.${heading}`, {}, voice);
  return {
    headings: [say('number'), say('along'), say('back')],
    rows: part.ordinates.map(({ s, t }, i) => [String(i + 1), groundTo(s, voice), groundTo(t, voice)]),
  };
}

/** The outline's lines and arcs, in the order of the edge, with the arcs' radii and centres. */
export function arcRows(outline: string, voice: InVoice): FigureTable {
  const curves = readReportPath(outline).flat();
  const inOrder = curves[0]!.x0 <= curves[curves.length - 1]!.x1 ? curves : reverseCurves(curves);
  return {
    headings: ARC_HEADINGS.map((heading) => sayKnife(`table.${heading}`, {}, voice)),
    rows: inOrder.map((c, i) => [
      String(i + 1),
      ...[c.x0, c.y0, c.x1, c.y1].map((mm) => groundTo(mm, voice)),
      ...(isStraight(c)
        ? [sayKnife('table.line', {}, voice), '', '']
        : [c.r, c.cx, c.cy].map((mm) => groundTo(mm, voice))),
    ]),
  };
}

const ARC_HEADINGS = ['piece', 'from-s', 'from-t', 'to-s', 'to-t', 'radius', 'centre-s', 'centre-t'] as const;

/** An arc that bows less than this, mm, is ground as a line. */
const STRAIGHT = 0.002;

function isStraight({ x0, y0, x1, y1, r, turn }: Curve): boolean {
  return turn === 0 || Math.hypot(x1 - x0, y1 - y0) ** 2 / (8 * r) < STRAIGHT;
}

/** What stands on the first sheet already, and the y where it ends, mm. */
export interface SheetStart {
  readonly items: readonly Item[];
  readonly y: number;
}

/** A table, its heading, the heading where it goes on, and the number of blocks that it stands in beside each other. */
interface OrderTable {
  readonly title: string;
  readonly more: string;
  readonly table: FigureTable;
  readonly blocks: number;
}

/** Tables over as many sheets `height` mm high as they take, below what stands on the first: each a list of items. */
export function tableSheets(tables: readonly OrderTable[], height: number, start?: SheetStart): Item[][] {
  const { margin, foot } = ORDER_PAPER;
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
  tables.forEach(({ title, more, table, blocks }, k) => {
    let from = 0;
    while (from < table.rows.length) {
      if (most - y < 14 + 4 * ROW) turn();
      const perBlock = Math.floor((most - y - 10) / ROW);
      const rows = table.rows.slice(from, from + perBlock * blocks);
      const each = Math.max(1, Math.ceil(rows.length / blocks));
      items.push(text(`table ${k} ${from}`, 'text', margin, y, from === 0 ? title : more, 3.5));
      items.push(drawTable(`rows ${k} ${from}`, { headings: table.headings, rows }, margin, y + 6, each));
      y += 6 + tableHeight(each) + 10;
      from += rows.length;
    }
  });
  turn();
  return sheets;
}
