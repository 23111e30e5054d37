import type { Language, Sample } from '@fielded/core';
import { type OfficePaper, PAPERS } from '../paper.ts';
import type { Item, Scene } from '../scene.ts';
import { group, itemsBox, moveItems, text } from '../scene.ts';
import type { Theme } from '../style.ts';
import { sceneToSvg } from '../svg.ts';
import { safeText } from '../text/safe-text.ts';
import { saySample } from '../words/english/sample.ts';
import { scaleText } from '../words/lengths.ts';
import { unitsNote } from '../words/units-note.ts';
import { BEYOND, CAPTION, captionWidth, drawSample, saySizes } from './board-sample.ts';
import { drawScaleBar } from './scale-bar.ts';

/** The shop's sample board: what to draw and how. */
export interface BoardDrawing {
  readonly samples: readonly Sample[];
  readonly units: 'mm' | 'in';
  /** What its words are in; English unless told. */
  readonly language?: Language;
  readonly title: string;
  /** Paper mm for one mm of wood; 1 unless told: a client holds a door against it. */
  readonly scale?: number;
  readonly theme?: Theme;
  /** What its sheets are printed on; A4 unless told. */
  readonly paper?: OfficePaper;
}

const MARGIN = 8;
/** Wood shown under the deepest cut, mm of wood. */
const UNDER = 10;
const COLUMN_GAP = 14;
const ROW_GAP = 12;
/** How wide a sheet's samples stand, and what of its height is left free. */
const SHEET_WIDTH = 182;
const SHEET_FREE = 27;
/** From the title's baseline to the first section, and room for the bar. */
const HEADING = 16;
const BAR = 8;
const NOTE = 2.5;
const TITLE = 5;

/**
 * Every knife's section at one scale with its name and main sizes, as plain data: one drawing, however tall.
 *
 * All sections are of stock of one thickness, so that depths compare. Throws RangeError for no samples, or a scale that is
 * not above 0.
 */
export function boardScene(drawing: BoardDrawing): Scene {
  return drawSheet(drawing, layRows(drawing), null);
}

/** The sample board as SVG text: the same bytes for the same shop. */
export function drawBoard(drawing: BoardDrawing): string {
  return sceneToSvg(boardScene(drawing), { theme: drawing.theme ?? 'print' });
}

/** The sample board on as many sheets as it takes, each an SVG text. */
export function drawBoardSheets(drawing: BoardDrawing): string[] {
  const rows = layRows(drawing);
  const room = PAPERS[drawing.paper ?? 'a4'].height - SHEET_FREE;
  const perSheet = Math.max(1, Math.floor((room - HEADING - BAR) / rowHeight(drawing)));
  const sheets = Math.ceil(rows.length / perSheet);
  return Array.from({ length: sheets }, (_, i) => {
    const part = sheets === 1 ? null : { sheet: i + 1, of: sheets };
    const scene = drawSheet(drawing, rows.slice(i * perSheet, (i + 1) * perSheet), part);
    return sceneToSvg(scene, { theme: drawing.theme ?? 'print' });
  });
}

/** The number of a sheet, and how many there are. */
interface Part {
  readonly sheet: number;
  readonly of: number;
}

/** A sample with its place along its row. */
interface Placed {
  readonly sample: Sample;
  readonly x: number;
}

function layRows(drawing: BoardDrawing): Placed[][] {
  const { samples, scale = 1 } = drawing;
  if (!(scale > 0 && Number.isFinite(scale))) throw new RangeError(`scale ${scale}`);
  if (samples.length === 0) throw new RangeError('a board needs at least one knife');
  const rows: Placed[][] = [];
  let x = Number.POSITIVE_INFINITY;
  for (const sample of samples) {
    const width = Math.max((sample.reach + BEYOND) * scale, captionWidth(sample, drawing));
    if (x + width > SHEET_WIDTH) {
      rows.push([]);
      x = 0;
    }
    rows[rows.length - 1]!.push({ sample, x });
    x += width + COLUMN_GAP;
  }
  return rows;
}

function stockThickness({ samples }: BoardDrawing): number {
  return Math.max(...samples.map((sample) => sample.depth)) + UNDER;
}

function rowHeight(drawing: BoardDrawing): number {
  return stockThickness(drawing) * (drawing.scale ?? 1) + CAPTION + ROW_GAP;
}

function drawSheet(drawing: BoardDrawing, rows: readonly Placed[][], part: Part | null): Scene {
  const { title, scale = 1 } = drawing;
  const head = safeText(title);
  const drawn = { scale: scaleText(scale, drawing), units: unitsNote(drawing) };
  const note =
    part === null
      ? saySample('board.caption', drawn, drawing)
      : saySample('board.caption.part', { ...drawn, ...part }, drawing);
  const items: Item[] = [text('title', 'text', 0, 0, head, TITLE), text('caption', 'quiet', 0, 6, note, NOTE)];
  rows.forEach((row, r) => {
    const y = HEADING + r * rowHeight(drawing);
    row.forEach(({ sample, x }, i) => {
      items.push(group(`sample ${r} ${i}`, drawSample(sample, drawing, stockThickness(drawing), scale, x, y)));
    });
  });
  items.push(drawScaleBar(0, HEADING + rows.length * rowHeight(drawing), drawing));
  const whole = itemsBox(items)!;
  return {
    width: whole.x1 - whole.x0 + 2 * MARGIN,
    height: whole.y1 - whole.y0 + 2 * MARGIN,
    scale,
    title:
      part === null
        ? saySample('board.title', { board: head }, drawing)
        : saySample('board.title.part', { board: head, ...part }, drawing),
    description: rows
      .flatMap((row) =>
        row.map(({ sample: s }) =>
          saySample('board.described', { knife: safeText(s.name), sizes: saySizes(s, drawing) }, drawing),
        ),
      )
      .join(' '),
    items: moveItems(items, MARGIN - whole.x0, MARGIN - whole.y0),
  };
}
