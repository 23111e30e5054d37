import { type Curve, line, type Point } from '@fielded/geometry';
import type { GroupItem, Item, TextItem } from '../scene.ts';
import { path } from '../scene.ts';
import type { Arrow } from './arrow.ts';
import { ARROW_LENGTH, arrowBox, arrowhead } from './arrow.ts';
import type { LineStretch, Marks } from './board.ts';
import type { Figure, Lettering } from './figure.ts';
import { letteringBoxes, letteringItems, toneRoles } from './figure.ts';

/** On which side of the drawing a dimension stands. */
export type Side = 'above' | 'below' | 'left' | 'right';

/** A length between two points, measured level (`above`, `below`) or plumb (`left`, `right`). */
export interface LinearDimension extends Figure {
  readonly side: Side;
  readonly from: Point;
  readonly to: Point;
}

/** Where the text stands on the dimension line: over the measured length (in its middle, or near its lower or higher end), or beyond one end of it. */
export type TextAt = 'middle' | 'low' | 'high' | 'after' | 'before' | 'nowhere';

/** One way of drawing a dimension: what room it takes, and where everything goes. Cheap to make, since many are tried. */
export interface DrawnDimension {
  readonly figure: Figure;
  /** The dimension line (or leader) first, then extension lines. */
  readonly lines: readonly LineStretch[];
  readonly arrows: readonly Arrow[];
  /** Dimension arcs of angles. */
  readonly arcs?: readonly Curve[];
  /** The texts, made when the dimension is drawn. */
  readonly texts: () => readonly TextItem[];
  readonly marks: Marks;
  /** A leader that found no place near its end: it is long, or runs through a text. */
  readonly strained?: boolean;
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
export function textFits(dimension: LinearDimension, lettering: Lettering): boolean {
  const { low, high } = spanOf(dimension);
  return lettering.width + TEXT_CLEAR <= high - low;
}

/**
 * Draws a linear dimension whose line stands at `level` (its y when level, its x when plumb).
 *
 * Arrows turn outside when the length is too short for both; extension lines start clear of the outline and pass the
 * dimension line by 2 mm; the text stands above its line, read from below or from the right (ISO 129-1).
 */
export function drawLinear(
  dimension: LinearDimension,
  level: number,
  at: TextAt,
  lettering: Lettering,
): DrawnDimension {
  const upright = isUpright(dimension.side);
  const { low, high } = spanOf(dimension);
  const inside = high - low >= LEAST_FOR_ARROWS;
  let start = inside ? low : low - TAIL;
  let end = inside ? high : high + TAIL;
  const { width } = lettering;
  let middle = (low + high) / 2;
  if (at === 'low') middle = low + TEXT_CLEAR + width / 2;
  else if (at === 'high') middle = high - TEXT_CLEAR - width / 2;
  else if (at === 'after') {
    middle = (inside ? high + 1 : high + ARROW_LENGTH) + 1 + width / 2;
    end = middle + width / 2;
  } else if (at === 'before') {
    middle = (inside ? low - 1 : low - ARROW_LENGTH) - 1 - width / 2;
    start = middle - width / 2;
  }
  const way = inside ? -1 : 1;
  const arrows = [arrowAt(upright, low, level, way), arrowAt(upright, high, level, -way)];
  const lines = [stretch(upright, start, level, end, level)];
  for (const { x, y } of [dimension.from, dimension.to]) {
    const [along, from] = upright ? [y, x] : [x, y];
    const away = Math.sign(level - from);
    if (Math.abs(level - from) > GAP_AT_OUTLINE) {
      lines.push(stretch(upright, along, from + away * GAP_AT_OUTLINE, along, level + away * OVERSHOOT));
    }
  }
  if (at === 'nowhere') return drawnFigure(dimension, lines, arrows);
  const [x, y] = upright ? [level, middle + width / 2] : [middle - width / 2, level];
  return drawnFigure(dimension, lines, arrows, lettering, x, y, upright);
}

function stretch(upright: boolean, u0: number, v0: number, u1: number, v1: number): LineStretch {
  return upright ? { x0: v0, y0: u0, x1: v1, y1: u1 } : { x0: u0, y0: v0, x1: u1, y1: v1 };
}

function arrowAt(upright: boolean, along: number, across: number, way: number): Arrow {
  return upright ? { x: across, y: along, dx: 0, dy: way } : { x: along, y: across, dx: way, dy: 0 };
}

/** Lines, arrows and a lettered line that starts at (x, y), with the room they take; no texts without lettering. */
export function drawnFigure(
  figure: Figure,
  lines: readonly LineStretch[],
  arrows: readonly Arrow[],
  lettering?: Lettering,
  x = 0,
  y = 0,
  upright = false,
): DrawnDimension {
  return {
    figure,
    lines,
    arrows,
    texts: () => (lettering ? letteringItems(lettering, x, y, upright) : []),
    marks: { texts: lettering ? letteringBoxes(lettering, x, y, upright) : [], arrows: arrows.map(arrowBox), lines },
  };
}

/** A drawn dimension as one group, with what it measures. */
export function dimensionGroup({ figure, lines, arrows, arcs = [], texts }: DrawnDimension): GroupItem {
  const { key, of, value, label } = figure;
  const roles = toneRoles(figure.tone);
  const curves = [...arcs, ...lines.map((l) => line(l.x0, l.y0, l.x1, l.y1))];
  const strokes = curves.map((c) => ({ curves: [c], closed: false }));
  const items: Item[] = [
    path('lines', roles.line, strokes),
    path('arrows', roles.fill, arrows.map(arrowhead)),
    ...texts(),
  ];
  return { kind: 'group', key, of, value, label, items };
}
