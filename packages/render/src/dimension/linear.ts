import type { Curve } from '@fielded/core';
import { line } from '../geometry/curves.ts';
import type { Loop } from '../geometry/path.ts';
import type { GroupItem, Item, TextItem } from '../scene.ts';
import { path, textBox } from '../scene.ts';
import { ARROW_LENGTH, arrowBox, arrowhead } from './arrow.ts';
import type { Marks, Stretch } from './board.ts';
import type { Figure } from './figure.ts';
import { figureTexts, figureWidth, toneRoles } from './figure.ts';

/** On which side of the drawing a dimension stands. */
export type Side = 'above' | 'below' | 'left' | 'right';

/** A point on the paper, mm. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A length between two points, measured level (`above`, `below`) or plumb (`left`, `right`). */
export interface LinearDimension extends Figure {
  readonly side: Side;
  readonly from: Point;
  readonly to: Point;
}

/** Where the text stands on the dimension line: over the measured length (in its middle, or near its lower or higher end), or beyond one end of it. */
export interface TextPlace {
  readonly at: 'middle' | 'low' | 'high' | 'after' | 'before' | 'nowhere';
  readonly withWord: boolean;
}

/** One way of drawing a dimension: what it looks like and what room it takes. */
export interface Drawn {
  readonly figure: Figure;
  /** The dimension line (or leader) first, then extension lines. */
  readonly lines: readonly Stretch[];
  readonly arrows: readonly Loop[];
  /** Dimension arcs of angles. */
  readonly arcs?: readonly Curve[];
  readonly texts: readonly TextItem[];
  readonly marks: Marks;
}

const GAP_AT_OUTLINE = 1;
const OVERSHOOT = 2;
const TEXT_CLEAR = 1.2;
const TAIL = ARROW_LENGTH + 2.5;
/** Below this two arrowheads inside would touch. */
const LEAST_FOR_ARROWS = 2 * ARROW_LENGTH + 2;

/** Whether a dimension runs up and down. */
export function isUpright(side: Side): boolean {
  return side === 'left' || side === 'right';
}

/** The ends of the measured length along the dimension line, the lesser first. */
export function spanOf(dimension: LinearDimension): { low: number; high: number } {
  const upright = isUpright(dimension.side);
  const a = upright ? dimension.from.y : dimension.from.x;
  const b = upright ? dimension.to.y : dimension.to.x;
  return { low: Math.min(a, b), high: Math.max(a, b) };
}

/** Whether the figure fits over the measured length. */
export function textFits(dimension: LinearDimension, withWord: boolean): boolean {
  const { low, high } = spanOf(dimension);
  return figureWidth(dimension, withWord) + TEXT_CLEAR <= high - low;
}

/**
 * Draws a linear dimension whose line stands at `level` (its y when level, its x when plumb).
 *
 * Arrows turn outside when the length is too short for both; extension lines start clear of the outline and pass the
 * dimension line by 2 mm; the text stands above its line, read from below or from the right (ISO 129-1).
 */
export function drawLinear(dimension: LinearDimension, level: number, place: TextPlace): Drawn {
  const upright = isUpright(dimension.side);
  const { low, high } = spanOf(dimension);
  const point = (along: number, across: number): [number, number] => (upright ? [across, along] : [along, across]);
  const stretch = (u0: number, v0: number, u1: number, v1: number): Stretch => {
    const [x0, y0] = point(u0, v0);
    const [x1, y1] = point(u1, v1);
    return { x0, y0, x1, y1 };
  };
  const head = (along: number, direction: number): Loop => {
    const [x, y] = point(along, level);
    return upright ? arrowhead(x, y, 0, direction) : arrowhead(x, y, direction, 0);
  };

  const inside = high - low >= LEAST_FOR_ARROWS;
  let start = inside ? low : low - TAIL;
  let end = inside ? high : high + TAIL;
  const width = figureWidth(dimension, place.withWord);
  let middle = (low + high) / 2;
  if (place.at === 'low') middle = low + TEXT_CLEAR + width / 2;
  else if (place.at === 'high') middle = high - TEXT_CLEAR - width / 2;
  else if (place.at === 'after') {
    middle = (inside ? high + 1 : high + ARROW_LENGTH) + 1 + width / 2;
    end = middle + width / 2;
  } else if (place.at === 'before') {
    middle = (inside ? low - 1 : low - ARROW_LENGTH) - 1 - width / 2;
    start = middle - width / 2;
  }
  const [textX, textY] = point(upright ? middle + width / 2 : middle - width / 2, level);
  const texts = place.at === 'nowhere' ? [] : figureTexts(dimension, textX, textY, upright, place.withWord);
  const arrows = inside ? [head(low, -1), head(high, 1)] : [head(low, 1), head(high, -1)];
  const lines = [stretch(start, level, end, level)];
  for (const end of [dimension.from, dimension.to]) {
    const [along, from] = upright ? [end.y, end.x] : [end.x, end.y];
    const away = Math.sign(level - from);
    if (Math.abs(level - from) > GAP_AT_OUTLINE) {
      lines.push(stretch(along, from + away * GAP_AT_OUTLINE, along, level + away * OVERSHOOT));
    }
  }
  return drawnFigure(dimension, lines, arrows, texts);
}

/** Lines, arrows and texts with the room they take. */
export function drawnFigure(
  figure: Figure,
  lines: readonly Stretch[],
  arrows: readonly Loop[],
  texts: readonly TextItem[],
): Drawn {
  return { figure, lines, arrows, texts, marks: { texts: texts.map(textBox), arrows: arrows.map(arrowBox), lines } };
}

/** A drawn dimension as one group, with what it measures. */
export function dimensionGroup({ figure, lines, arrows, arcs = [], texts }: Drawn): GroupItem {
  const { key, of, value, label } = figure;
  const roles = toneRoles(figure.tone);
  const strokes = [...arcs, ...lines.map((l) => line(l.x0, l.y0, l.x1, l.y1))].map((c) => ({
    curves: [c],
    closed: false,
  }));
  const items: Item[] = [path('lines', roles.line, strokes), path('arrows', roles.fill, arrows), ...texts];
  return { kind: 'group', key, of, value, label, items };
}
