import type { KnifeReport, Language, Report } from '@fielded/core';
import { type Box, joinBoxes, loopsBox } from '@fielded/geometry';
import type { Figure } from '../dimension/figure.ts';
import { layDimensions } from '../dimension/lay-dimensions.ts';
import type { LinearDimension, Side } from '../dimension/linear.ts';
import type { Sketch } from '../dimension/sketch.ts';
import { stroke } from '../geometry/stroke.ts';
import type { GroupItem, Item, Scene } from '../scene.ts';
import { group, itemsBox, moveItems, path, text } from '../scene.ts';
import type { Theme } from '../style.ts';
import { sceneToSvg } from '../svg.ts';
import { textWidth, wrapText } from '../text/measure-text.ts';
import { safeText } from '../text/safe-text.ts';
import { sayKnife } from '../words/english/knife.ts';
import { figureText, groundTo, type InVoice } from '../words/lengths.ts';
import { unitsNote } from '../words/units-note.ts';
import { knifeNotes } from './knife-notes.ts';
import { drawScaleBar } from './scale-bar.ts';
import { drawSteelBlank, type LaidKnife, layKnife } from './steel.ts';
import { drawTable, type FigureTable, tableHeight } from './table.ts';

/** A knife to be drawn, and for whom. */
export interface KnifeDrawing {
  readonly knife: KnifeReport;
  readonly units: Report['units'];
  /** What its words are in; English unless told. */
  readonly language?: Language;
  /** What it belongs to: the job's title, or the shop. */
  readonly title: string;
  /** What is to be ground: the knife, or the limiter in front of which it stands. */
  readonly part: 'knife' | 'limiter';
  readonly theme?: Theme;
  /** Paper as wide as this at most, mm: the ordinates then stand under the outline. Left out, they stand beside it. */
  readonly across?: number;
}

const MARGIN = 8;
const TIP_LINE = 9;
const TABLE_AWAY = 14;
/** Rows of ordinates before they go on in a second block: an on-edge knife's then still fit an A4 sheet. */
const MOST_ROWS = 34;
const LEAST_WIDTH = 172;
const NAME_HEIGHT = 5;
const NOTE_HEIGHT = 2.5;

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
  const top = Math.min(box.y0 + 2.5, box.y1 - tableHeight(Math.min(MOST_ROWS, table.rows.length)));
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

/** Length on the steel and in the wood, width, and where the tip stands in it. */
function knifeSizes(knife: KnifeReport, voice: InVoice, laid: LaidKnife, around: Box): LinearDimension[] {
  const tiers: LinearDimension[] = [];
  const add = (side: Side, figure: Figure, x0: number, y0: number, x1: number, y1: number) =>
    tiers.push({ ...figure, side, from: { x: x0, y: y0 }, to: { x: x1, y: y1 } });
  const figure = (key: keyof KnifeReport | 'wood.length', value: number, word: string, label: string): Figure => ({
    key,
    of: `knives.${key}`,
    value,
    ...figureText(value, voice),
    word,
    label,
    tone: 'plain',
  });
  const steel = loopsBox(laid.knife)!;
  const wood = loopsBox(laid.wood)!;
  const { x0, x1 } = around;
  add(
    'right',
    figure(
      'length',
      knife.length,
      sayKnife('mark.knifeLength', {}, voice),
      sayKnife('label.knifeLength', { mm: knife.length }, voice),
    ),
    x1,
    -knife.length,
    x1,
    0,
  );
  add(
    'left',
    figure(
      'wood.length',
      knife.wood.length,
      sayKnife('mark.woodLength', {}, voice),
      sayKnife('label.woodLength', { mm: knife.wood.length }, voice),
    ),
    x0,
    wood.y0,
    x0,
    wood.y1,
  );
  add(
    'below',
    figure('width', knife.width, '', sayKnife('label.knifeWidth', { mm: knife.width }, voice)),
    steel.x0,
    steel.y1,
    steel.x1,
    steel.y1,
  );
  const shallow = laid.way > 0 ? steel.x0 : steel.x1;
  const toTip = Math.abs(shallow);
  if (toTip > 0.005 && knife.width - toTip > 0.005)
    add(
      'below',
      figure('tipAt', toTip, sayKnife('mark.toTip', {}, voice), sayKnife('label.toTip', { mm: toTip }, voice)),
      shallow,
      steel.y1,
      0,
      0,
    );
  return tiers;
}

/** The limiter's own extent along t and along s, and how far it lies back from the knife's tip line. */
function limiterSizes(knife: KnifeReport, voice: InVoice, laid: LaidKnife, around: Box): LinearDimension[] {
  const { x0, x1, y0, y1 } = loopsBox(laid.limiter)!;
  const size = (key: string, value: number, word: string, label: string): Figure => ({
    key: `limiter.${key}`,
    of: `knives.limiter.${key}`,
    value,
    ...figureText(value, voice),
    word,
    label,
    tone: 'plain',
  });
  const { length, width } = knife.limiter!;
  const right = around.x1;
  return [
    {
      ...size(
        'length',
        length,
        sayKnife('mark.limiterLength', {}, voice),
        sayKnife('label.limiterLength', { mm: length }, voice),
      ),
      side: 'right',
      from: { x: right, y: y0 },
      to: { x: right, y: y1 },
    },
    {
      ...size('width', width, '', sayKnife('label.limiterWidth', { mm: width }, voice)),
      side: 'below',
      from: { x: x0, y: y1 },
      to: { x: x1, y: y1 },
    },
  ];
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

function drawKnifeFoot(drawing: KnifeDrawing, above: Box): Item[] {
  const { knife, part, across = Infinity } = drawing;
  const left = above.x0;
  const right = Math.max(above.x1, left + Math.min(LEAST_WIDTH, across - 2 * MARGIN));
  const rule = above.y1 + 8;
  const name = sayKnife(`${part}.name`, { cut: safeText(knife.cut) }, drawing);
  const caption = sayKnife('knife.caption', { job: safeText(drawing.title), units: unitsNote(drawing) }, drawing);
  const beside = textWidth(name, NAME_HEIGHT) + 8 + textWidth(caption, NOTE_HEIGHT) <= right - left;
  let y = rule + 9;
  const items: Item[] = [
    path('rule', 'thin', [stroke(left, rule, right, rule)]),
    text('name', 'text', left, y, name, NAME_HEIGHT),
    text(
      'caption',
      'quiet',
      beside ? right : left,
      beside ? y : y + 5.5,
      caption,
      NOTE_HEIGHT,
      beside ? 'end' : 'start',
    ),
  ];
  y += beside ? 7 : 12.5;
  const key = drawKey(drawing, left, y, right);
  items.push(...key.items);
  y = key.last + 7;
  const put = (key: string, words: string, role: 'text' | 'quiet' | 'trouble-text') => {
    wrapText(words, NOTE_HEIGHT, right - left).forEach((words, i) => {
      items.push(text(`${key} ${i}`, role, left, y, words, NOTE_HEIGHT));
      y += 4.6;
    });
    y += 0.6;
  };
  knifeNotes(knife, drawing).forEach((words, i) => {
    put(`note ${i}`, words, 'text');
  });
  knife.warnings.forEach(({ message, severity }, i) => {
    put(`warning ${i}`, safeText(message), severity === 'error' ? 'trouble-text' : 'quiet');
  });
  items.push(drawScaleBar(left, y + 3, drawing));
  return [group('foot', items)];
}

/** What each kind of line is, in as many rows as it takes, and the base of the last one. */
function drawKey(
  drawing: KnifeDrawing,
  x: number,
  top: number,
  right: number,
): { readonly items: Item[]; readonly last: number } {
  const { knife, part } = drawing;
  const other = part === 'knife' ? 'limiter' : 'knife';
  const entries = [
    { key: part, words: sayKnife(`key.${part}`, {}, drawing), role: 'outline' as const },
    { key: 'profile in the wood, tip on tip', words: sayKnife('key.wood', {}, drawing), role: 'old' as const },
    ...(knife.limiter ? [{ key: other, words: sayKnife(`key.${other}`, {}, drawing), role: 'hidden' as const }] : []),
    { key: 'tip line', words: sayKnife('key.tip', {}, drawing), role: 'cutter' as const },
  ];
  let at = x;
  let y = top;
  const items = entries.flatMap(({ key, words, role }) => {
    const width = 13 + textWidth(words, NOTE_HEIGHT);
    if (at > x && at + width > right) {
      at = x;
      y += 5;
    }
    const sample = stroke(at, y - 1, at + 11, y - 1);
    const items = [path(`key ${key}`, role, [sample]), text(`key to ${key}`, 'text', at + 13, y, words, NOTE_HEIGHT)];
    at += width + 7;
    return items;
  });
  return { items, last: y };
}
