import type { Language } from '@fielded/core';
import {
  type Box,
  type Chain,
  cropLoops,
  curveBox,
  flipCurve,
  joinBoxes,
  type Loop,
  shiftCurve,
} from '@fielded/geometry';
import { stroke } from '../geometry/stroke.ts';
import { PAPERS, type PaperName } from '../paper.ts';
import { type Item, path, type Scene, text } from '../scene.ts';
import { drawCheckBar } from '../sheet/check-bar.ts';
import { breakLines, fitText, textWidth } from '../text/measure-text.ts';
import { sayList } from '../words/english/list.ts';

/** An outline to print at full size: mm, y up. */
export interface Template {
  readonly outline: Chain;
  readonly title: string;
  readonly notes: readonly string[];
  readonly units: 'mm' | 'in';
  /** What its words are in; English unless told. */
  readonly language?: Language;
}

const SIDE = 14;
const TOP = 16;
const FOOT = 34;
const CROSS = 4;
const WORDS = 2.2;
/** Notes stand beside the bar: their width, the step of their lines and the most lines, mm. */
const NOTES = { width: 76, line: 3.2, most: 8 };

/** A template on one piece of paper just large enough for it, at full size. */
export function templateScene(template: Template): Scene {
  const { outline, title, notes } = template;
  const { loop, box } = onPaper(outline, SIDE, TOP);
  const foot = box.y1 + 10;
  return {
    width: Math.max(box.x1 + SIDE, 130),
    height: foot + 14 + notes.length * 4.5,
    scale: 1,
    title,
    description: sayList('template.described', { title }, template),
    items: [
      text('title', 'text', SIDE, 9, title, 3),
      path('outline', 'outline', [loop]),
      ...drawCheckBar(SIDE, foot, template),
      ...notes.map((words, i) => text(`note ${i}`, 'quiet', SIDE, foot + 10 + i * 4.5, words, WORDS)),
    ],
  };
}

/**
 * A template over as many sheets as it takes. Each shows its part of the outline; the crosses at its corners are those of its
 * neighbours, and lie on each other when the sheets are put together.
 */
export function templateSheets(template: Template, paper: PaperName = 'a4'): Scene[] {
  const { outline } = template;
  const { width, height } = PAPERS[paper];
  const tile = { width: width - 2 * SIDE, height: height - TOP - FOOT };
  const { loop, box } = onPaper(outline, CROSS, CROSS);
  const across = Math.ceil((box.x1 + CROSS) / tile.width);
  const down = Math.ceil((box.y1 + CROSS) / tile.height);
  const tiles = Array.from({ length: across * down }, (_, k) => ({
    tile,
    column: k % across,
    row: Math.floor(k / across),
    across,
    down,
  }));
  return tiles.flatMap((each) => tileSheet(template, loop, each, { width, height }) ?? []);
}

/** The sheet of one tile; null where no part of the outline lies on it, since it would only hold the others together. */
function tileSheet(
  template: Template,
  loop: Loop,
  where: Tile,
  { width, height }: { readonly width: number; readonly height: number },
): Scene | null {
  const { title, notes } = template;
  const { tile, column, row, across, down } = where;
  const [left, top] = [column * tile.width, row * tile.height];
  const shown = cropLoops([loop], { x0: left, y0: top, x1: left + tile.width, y1: top + tile.height }).outline;
  if (shown.length === 0) return null;
  const onSheet = (c: Chain[number]) => shiftCurve(c, SIDE - left, TOP - top);
  const place = `${String.fromCharCode(65 + (column % 26))}${row + 1}`;
  const number = sayList('template.place', { place, across, down }, template);
  return {
    width,
    height,
    scale: 1,
    title,
    description: sayList('template.sheet', { title, place }, template),
    items: [
      text('title', 'text', SIDE, 9, fitText(title, 3, width - 2 * SIDE - 40), 3),
      text('place', 'text', width - SIDE, 9, number, 3, 'end'),
      path(
        'outline',
        'outline',
        shown.map((c) => ({ curves: [onSheet(c)], closed: false })),
      ),
      ...drawCrosses(where, place, { ...loop, curves: loop.curves.map(onSheet) }),
      ...drawCheckBar(SIDE, height - 14, template),
      ...drawNotes(notes, width, height),
    ],
  };
}

/** The notes at the sheet's lower right, as many lines as there is room for. */
function drawNotes(notes: readonly string[], width: number, height: number): Item[] {
  const lines = notes.flatMap((words) => breakLines(words, WORDS, NOTES.width)).slice(0, NOTES.most);
  const top = height - 6 - (lines.length - 1) * NOTES.line;
  return lines.map((words, i) =>
    text(`note ${i}`, 'quiet', width - SIDE - NOTES.width, top + i * NOTES.line, words, WORDS),
  );
}

/** The outline with y down, its box's corner at (left, top). */
function onPaper(outline: Chain, left: number, top: number): { loop: Loop; box: Box } {
  const curves = outline.map((c) => flipCurve(c, 0));
  const own = joinBoxes(curves.map(curveBox))!;
  const moved = curves.map((c) => shiftCurve(c, left - own.x0, top - own.y0));
  return { loop: { curves: moved, closed: true }, box: joinBoxes(moved.map(curveBox))! };
}

/** The part of a template on one sheet: how large it is, mm, and where it lies among how many. */
interface Tile {
  readonly tile: { readonly width: number; readonly height: number };
  readonly column: number;
  readonly row: number;
  readonly across: number;
  readonly down: number;
}

/** Crosses at a tile's corners, each named after the sheets that share it; `whole` is the outline as it lies on this sheet and beyond. */
function drawCrosses({ tile, column, row, across, down }: Tile, place: string, whole: Loop): Item[] {
  const corners = [0, 1].flatMap((right) => [0, 1].map((low) => ({ right, low })));
  // Beyond the outermost sheets there is no neighbour to lie on.
  const shared = corners.filter(
    ({ right, low }) => (column + right > 0 && column + right < across) || (row + low > 0 && row + low < down),
  );
  return shared.flatMap(({ right, low }) => {
    const [x, y] = [SIDE + right * tile.width, TOP + low * tile.height];
    return [
      path(`cross ${place} ${right} ${low}`, 'thin', [
        stroke(x - CROSS, y, x + CROSS, y),
        stroke(x, y - CROSS, x, y + CROSS),
      ]),
      nameCross(`cross name ${right} ${low}`, x, y, `${column + right}/${row + low}`, whole),
    ];
  });
}

/** The name of a cross in that of its four quarters through which no outline runs, the upper right one first. */
function nameCross(key: string, x: number, y: number, name: string, whole: Loop): Item {
  const width = textWidth(name, NAME);
  const places = [
    { left: x + 1, base: y - 1 },
    { left: x - 1 - width, base: y - 1 },
    { left: x + 1, base: y + 1 + NAME },
    { left: x - 1 - width, base: y + 1 + NAME },
  ];
  const free = ({ left, base }: (typeof places)[number]) =>
    cropLoops([whole], { x0: left - 0.5, y0: base - NAME - 0.5, x1: left + width + 0.5, y1: base + 0.5 }).outline
      .length === 0;
  const { left, base } = places.find(free) ?? places[0]!;
  return text(key, 'quiet', left, base, name, NAME);
}

/** Height of a cross's name, mm. */
const NAME = 1.8;
