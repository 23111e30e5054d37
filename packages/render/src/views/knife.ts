import { type Box, joinBoxes, loopsBox } from '@fielded/geometry';
import { layDimensions } from '../dimension/lay-dimensions.ts';
import type { Sketch } from '../dimension/sketch.ts';
import { stroke } from '../geometry/stroke.ts';
import type { GroupItem, Item, Scene } from '../scene.ts';
import { itemsBox, moveItems, path } from '../scene.ts';
import { sceneToSvg } from '../svg.ts';
import { safeText } from '../text/safe-text.ts';
import { sayKnife } from '../words/english/knife.ts';
import { groundTo } from '../words/lengths.ts';
import { type KnifeDrawing, MARGIN } from './knife-drawing.ts';
import { drawKnifeFoot } from './knife-foot.ts';
import { knifeNotes } from './knife-notes.ts';
import { knifeSizes, limiterSizes } from './knife-sizes.ts';
import { drawSteelBlank, type LaidKnife, layKnife } from './steel.ts';
import { drawTable, type FigureTable, tableHeight } from './table.ts';

const TIP_LINE = 9;
const TABLE_AWAY = 14;
/** Rows of ordinates before they go on in a second block: about as high as a knife with its sizes is. */
const MOST_ROWS = 24;

/**
 * A knife or its limiter at full size as plain data: outline over the wood's, tip line, ordinates, sizes, angles and hand.
 *
 * The wood's outline is laid tip on tip under the steel's, so that the stretch is seen. @throws RangeError for a limiter
 * that the report has none of.
 */
export function knifeScene(drawing: KnifeDrawing): Scene {
  const { knife, part } = drawing;
  if (part === 'limiter' && !knife.limiter) throw new RangeError(`the knife ${knife.cut} has no limiter`);
  const laid = layKnife(knife);
  const figures = layDimensions(sketchKnife(drawing, laid));
  const table = ordinateTable(drawing);
  const box = itemsBox(figures)!;
  const ordinates = drawing.across === undefined ? tableBeside(table, box) : tableBelow(table, box, drawing.across);
  const above = itemsBox([...figures, ordinates])!;
  const items: Item[] = [...figures, ordinates, ...drawKnifeFoot(drawing, above)];
  const whole = itemsBox(items)!;
  return {
    width: whole.x1 - whole.x0 + 2 * MARGIN,
    height: whole.y1 - whole.y0 + 2 * MARGIN,
    scale: 1,
    title: sayKnife(`${part}.title`, { job: safeText(drawing.title), cut: safeText(knife.cut) }, drawing),
    description: [sayDescribed(drawing), ...knifeNotes(knife, drawing)].join(' '),
    items: moveItems(items, MARGIN - whole.x0, MARGIN - whole.y0),
  };
}

/** What is drawn, with its overall sizes, for those who cannot see it. */
function sayDescribed(drawing: KnifeDrawing): string {
  const { knife, part } = drawing;
  const cut = safeText(knife.cut);
  if (part === 'limiter') {
    const { length, width } = knife.limiter!;
    return sayKnife('limiter.described', { cut, length, width }, drawing);
  }
  const { length, width, wood } = knife;
  return sayKnife('knife.described', { cut, length, width, wood: wood.length }, drawing);
}

/** The ordinates at the right of the outline, down to its foot. */
function tableBeside(table: FigureTable, box: Box): GroupItem {
  const blocks = Math.max(1, Math.ceil(table.rows.length / MOST_ROWS));
  const top = Math.min(box.y0 + 2.5, box.y1 - tableHeight(Math.ceil(table.rows.length / blocks)));
  return drawTable('ordinates', table, box.x1 + TABLE_AWAY, top, MOST_ROWS);
}

/** The ordinates under the outline, in as many blocks beside each other as the paper is wide. */
function tableBelow(table: FigureTable, box: Box, across: number): GroupItem {
  const laid = (blocks: number) =>
    drawTable('ordinates', table, box.x0, box.y1 + TABLE_AWAY, Math.ceil(table.rows.length / blocks));
  const fits = (blocks: number) => {
    const { x0, x1 } = itemsBox([laid(blocks)])!;
    return x1 - x0 <= across - 2 * MARGIN;
  };
  return laid([4, 3, 2].find(fits) ?? 1);
}

/** A knife or its limiter at full size as SVG text: the same bytes for the same report. */
export function drawKnife(drawing: KnifeDrawing): string {
  return sceneToSvg(knifeScene(drawing), { theme: drawing.theme ?? 'print' });
}

/** The outlines with their overall sizes. */
export function sketchKnife(drawing: KnifeDrawing, laid: LaidKnife): Sketch {
  const { knife, part } = drawing;
  const main = part === 'knife' ? laid.knife : laid.limiter;
  const other = part === 'knife' ? laid.limiter : laid.knife;
  const blank = drawSteelBlank(main, part);
  const around = joinBoxes([loopsBox(main)!, loopsBox(laid.wood)!, loopsBox(laid.knife)!])!;
  const reach: Box = { ...around, y0: around.y0 - 10 };
  const tipLine = stroke(around.x0 - TIP_LINE, 0, around.x1 + TIP_LINE, 0);
  const items: Item[] = [
    ...blank.items,
    path('tip line', 'cutter', [tipLine]),
    path('wood', 'old', laid.wood),
    path(part === 'knife' ? 'limiter' : 'knife', 'hidden', other),
    path(part, 'outline', main),
  ];
  const outlines = [...main, ...laid.wood, ...other].flatMap((loop) => loop.curves);
  return {
    items,
    outlines: [...outlines, ...blank.outlines],
    woods: [],
    around: reach,
    tiers: part === 'limiter' ? limiterSizes(knife, drawing, laid, around) : knifeSizes(knife, drawing, laid, around),
    interiors: [],
    leaders: [],
  };
}

/** Along the edge: place on the tip line, and how far the edge lies back from it, of what is to be ground. */
function ordinateTable(drawing: KnifeDrawing): FigureTable {
  const { knife, part } = drawing;
  const { ordinates } = part === 'limiter' && knife.limiter ? knife.limiter : knife;
  return {
    headings: [sayKnife('table.along', {}, drawing), sayKnife(`table.${part}`, {}, drawing)],
    rows: ordinates.map(({ s, t }) => [groundTo(s, drawing), groundTo(t, drawing)]),
  };
}
