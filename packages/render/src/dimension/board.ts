import {
  type Box,
  boxesOverlap,
  type Curve,
  curveBox,
  curveMeetsBox,
  type Loop,
  lineMeetsBox,
} from '@fielded/geometry';

/** A straight stretch of a dimension, extension or leader line. */
export interface LineStretch {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** What one way of drawing a dimension puts on the paper. */
export interface Marks {
  readonly texts: readonly Box[];
  readonly arrows: readonly Box[];
  readonly lines: readonly LineStretch[];
}

/** What is on the paper already and has to be kept clear of. Filled as dimensions are placed. */
export interface Board {
  readonly texts: Box[];
  readonly arrows: Box[];
  readonly lines: LineStretch[];
  readonly outlines: { readonly curve: Curve; readonly box: Box }[];
  /** Hatched parts: texts keep out of them where they can. */
  readonly woods: readonly Loop[];
}

/** Faults are weighed so that one text that cannot be read outweighs any number of crossed thin lines. */
export const UNREADABLE = 1000;
/** Hatching is interrupted for a text, yet white paper is better. */
const ON_WOOD = 40;
const ARROWS_MEET = 200;
export const CROSSED = 60;
const LINES_CROSS = 2.5;

const CLEAR_OF_TEXT = 0.9;
const CLEAR_OF_OUTLINE = 0.8;
const CLEAR_OF_LINE = 0.3;

export function newBoard(outlines: readonly Curve[], woods: readonly Loop[]): Board {
  return {
    texts: [],
    arrows: [],
    lines: [],
    outlines: outlines.map((curve) => ({ curve, box: curveBox(curve) })),
    woods,
  };
}

/** How much is wrong with putting these marks on the board; 0 when nothing is. Stops counting as soon as it comes to `enough`. */
export function weighMarks(marks: Marks, board: Board, enough: number = Infinity): number {
  let cost = 0;
  for (const text of marks.texts) {
    for (const other of board.texts) if (boxesOverlap(text, other, CLEAR_OF_TEXT)) cost += UNREADABLE;
    if (cost >= enough) return cost;
    for (const arrow of board.arrows) if (boxesOverlap(text, arrow, CLEAR_OF_LINE)) cost += UNREADABLE;
    if (cost >= enough) return cost;
    for (const line of board.lines) if (stretchMeetsBox(line, text)) cost += CROSSED;
    if (cost >= enough) return cost;
    for (const { curve, box } of board.outlines) {
      if (boxesOverlap(text, box, CLEAR_OF_OUTLINE) && curveMeetsBox(curve, text, CLEAR_OF_OUTLINE)) cost += UNREADABLE;
    }
    if (cost >= enough) return cost;
    if (liesInside(board.woods, (text.x0 + text.x1) / 2, (text.y0 + text.y1) / 2)) cost += ON_WOOD;
  }
  for (const arrow of marks.arrows) {
    for (const text of board.texts) if (boxesOverlap(arrow, text, CLEAR_OF_LINE)) cost += UNREADABLE;
    for (const other of board.arrows) if (boxesOverlap(arrow, other) && !sameBox(arrow, other)) cost += ARROWS_MEET;
    if (cost >= enough) return cost;
  }
  for (const line of marks.lines) {
    for (const text of board.texts) if (stretchMeetsBox(line, text)) cost += CROSSED;
    if (cost >= enough) return cost;
    for (const other of board.lines) if (stretchesCross(line, other)) cost += LINES_CROSS;
    if (cost >= enough) return cost;
  }
  return cost;
}

/** The marks of both together. */
export function joinMarks(a: Marks, b: Marks): Marks {
  return {
    texts: [...a.texts, ...b.texts],
    arrows: [...a.arrows, ...b.arrows],
    lines: [...a.lines, ...b.lines],
  };
}

/** Puts marks on the board for good. */
export function addMarks(marks: Marks, board: Board): void {
  board.texts.push(...marks.texts);
  board.arrows.push(...marks.arrows);
  board.lines.push(...marks.lines);
}

/** Whether (x, y) lies inside the closed loops, by the even-odd rule: counts crossings of a line to the right. */
function liesInside(loops: readonly Loop[], x: number, y: number): boolean {
  let inside = false;
  for (const loop of loops) {
    if (!loop.closed) continue;
    for (const { x0, y0, x1, y1 } of loop.curves) {
      // An arc is taken as its chord: the answer only says where a text would rather not stand.
      if (y0 <= y !== y1 <= y && x < x0 + ((y - y0) / (y1 - y0)) * (x1 - x0)) inside = !inside;
    }
  }
  return inside;
}

/** Whether two straight stretches cross, each from one side of the other to the other side. */
export function stretchesCross(a: LineStretch, b: LineStretch): boolean {
  const ax = a.x1 - a.x0;
  const ay = a.y1 - a.y0;
  const from = ax * (b.y0 - a.y0) - ay * (b.x0 - a.x0);
  const to = ax * (b.y1 - a.y0) - ay * (b.x1 - a.x0);
  if (from * to >= 0) return false;
  const bx = b.x1 - b.x0;
  const by = b.y1 - b.y0;
  return (bx * (a.y0 - b.y0) - by * (a.x0 - b.x0)) * (bx * (a.y1 - b.y0) - by * (a.x1 - b.x0)) < 0;
}

function stretchMeetsBox(line: LineStretch, box: Box): boolean {
  return lineMeetsBox(line.x0, line.y0, line.x1, line.y1, box, CLEAR_OF_LINE);
}

function sameBox(a: Box, b: Box): boolean {
  return Math.abs(a.x0 - b.x0) + Math.abs(a.y0 - b.y0) + Math.abs(a.x1 - b.x1) + Math.abs(a.y1 - b.y1) < 1e-6;
}
