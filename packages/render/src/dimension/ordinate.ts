import type { Box, Point } from '@fielded/geometry';
import type { Board, LineStretch } from './board.ts';
import { addMarks } from './board.ts';
import type { Figure } from './figure.ts';
import { FIGURE_HEIGHT, letter } from './figure.ts';
import type { DrawnDimension, Side } from './linear.ts';
import { drawnFigure, isUpright } from './linear.ts';

/** A distance from a common datum, written at the end of a line from its point. */
export interface OrdinateDimension extends Figure {
  readonly side: Side;
  readonly point: Point;
}

const OUT = 8;
const JOG = 5;
const PITCH = FIGURE_HEIGHT + 1.5;
const START = 1;

/**
 * Lays out ordinates side by side: each figure stands at the end of a line from its point, read along that line. Where points
 * lie closer than figures are tall, the lines are jogged apart evenly and never cross.
 *
 * Returns the box that dimensions further out have to keep clear of, beside what is drawn.
 */
export function layOrdinates(
  ordinates: readonly OrdinateDimension[],
  around: Box,
  board: Board,
): { drawn: DrawnDimension[]; around: Box } {
  let outer = around;
  const drawn: DrawnDimension[] = [];
  for (const side of ['above', 'below', 'left', 'right'] as const) {
    const along = (o: OrdinateDimension) => (isUpright(side) ? o.point.y : o.point.x);
    const own = ordinates.filter((ordinate) => ordinate.side === side).sort((a, b) => along(a) - along(b));
    const places = spread(own.map(along));
    const laid = own.map((ordinate, i) => drawOrdinate(ordinate, places[i]!, around));
    for (const { marks } of laid) {
      addMarks(marks, board);
      for (const box of marks.texts) outer = cover(outer, box, side);
    }
    drawn.push(...laid);
  }
  return { drawn, around: outer };
}

/** Places at least a pitch apart and as near as may be to where they are wanted, in the same order: pools of neighbours that would overlap move together. */
export function spread(wanted: readonly number[]): number[] {
  const pools: { sum: number; count: number }[] = [];
  wanted.forEach((want, i) => {
    pools.push({ sum: want - i * PITCH, count: 1 });
    while (pools.length > 1) {
      const last = pools[pools.length - 1]!;
      const before = pools[pools.length - 2]!;
      if (before.sum / before.count <= last.sum / last.count) break;
      pools.splice(-2, 2, { sum: before.sum + last.sum, count: before.count + last.count });
    }
  });
  return pools.flatMap(({ sum, count }) => new Array<number>(count).fill(sum / count)).map((at, i) => at + i * PITCH);
}

function drawOrdinate(ordinate: OrdinateDimension, place: number, around: Box): DrawnDimension {
  const { side, point } = ordinate;
  const upright = isUpright(side);
  const sign = side === 'above' || side === 'left' ? -1 : 1;
  const edge = { above: around.y0, below: around.y1, left: around.x0, right: around.x1 }[side];
  const from = upright ? point.x : point.y;
  const own = upright ? point.y : point.x;
  const stops = [
    [own, from + sign * START],
    [own, edge + sign * (OUT - JOG)],
    [place, edge + sign * OUT],
    [place, edge + sign * (OUT + 1.5)],
  ] as const;
  const lines = stops.slice(1).map(([u, v], i): LineStretch => {
    const [u0, v0] = stops[i]!;
    return upright ? { x0: v0, y0: u0, x1: v, y1: u } : { x0: u0, y0: v0, x1: u, y1: v };
  });
  // Level figures stand in the middle of their line; upright ones read from the right.
  const lettering = letter({ ...ordinate, word: '', under: '' }, false);
  const baseline = FIGURE_HEIGHT / 2 - lettering.parts[0]!.off;
  const near = edge + sign * (OUT + 2.5);
  const first = upright ? (sign < 0 ? near - lettering.width : near) : sign < 0 ? near : near + lettering.width;
  const [x, y] = upright ? [first, place + baseline] : [place + baseline, first];
  return drawnFigure(ordinate, lines, [], lettering, x, y, !upright);
}

function cover(around: Box, box: Box, side: Side): Box {
  if (side === 'above') return { ...around, y0: Math.min(around.y0, box.y0) };
  if (side === 'below') return { ...around, y1: Math.max(around.y1, box.y1) };
  return side === 'left'
    ? { ...around, x0: Math.min(around.x0, box.x0) }
    : { ...around, x1: Math.max(around.x1, box.x1) };
}
