import type { Board } from './board.ts';
import { addMarks, CROSSED, weighMarks } from './board.ts';
import type { LeaderDimension } from './leader.ts';
import { ANY_DIRECTION, layLeaders } from './leader.ts';
import type { Drawn, LinearDimension, TextPlace } from './linear.ts';
import { drawLinear, isUpright, spanOf, textFits } from './linear.ts';

/** A dimension that stands within the drawing, its line at one of `levels`, the best first. */
export interface InteriorDimension extends LinearDimension {
  readonly levels: readonly number[];
}

const LATER_LEVEL = 2;

/** Places dimensions within the drawing; a figure that finds no room beside its line gets a leader to free paper. */
export function layInteriors(dimensions: readonly InteriorDimension[], board: Board): Drawn[] {
  return dimensions.flatMap((dimension) => {
    let best: { cost: number; drawn: Drawn } | undefined;
    dimension.levels.forEach((level, rank) => {
      textPlaces(dimension).forEach((place, order) => {
        const drawn = drawLinear(dimension, level, place);
        const cost = weighMarks(drawn.marks, board) + rank * LATER_LEVEL + order * 3;
        if (!best || cost < best.cost) best = { cost, drawn };
      });
    });
    if (!best) return [];
    if (best.cost < CROSSED) {
      addMarks(best.drawn.marks, board);
      return [best.drawn];
    }
    return [withLeader(dimension, board)];
  });
}

function textPlaces(dimension: LinearDimension): TextPlace[] {
  const places: TextPlace[] = [];
  if (textFits(dimension, true)) places.push({ at: 'middle', withWord: true });
  if (textFits(dimension, false)) {
    for (const at of ['middle', 'low', 'high'] as const) places.push({ at, withWord: false });
  }
  for (const at of ['before', 'after'] as const) places.push({ at, withWord: true }, { at, withWord: false });
  return places;
}

/** Draws the line where its arrows do least harm, and leads its figure away to free paper. */
function withLeader(dimension: InteriorDimension, board: Board): Drawn {
  const lines = dimension.levels.map((level) => drawLinear(dimension, level, { at: 'nowhere', withWord: false }));
  const costs = lines.map((line, rank) => weighMarks(line.marks, board) + rank * LATER_LEVEL);
  const chosen = costs.indexOf(Math.min(...costs));
  const line = lines[chosen]!;
  const level = dimension.levels[chosen]!;
  addMarks(line.marks, board);
  const { low, high } = spanOf(dimension);
  const middle = (low + high) / 2;
  const target = isUpright(dimension.side) ? { x: level, y: middle } : { x: middle, y: level };
  const leader: LeaderDimension = { ...dimension, targets: [{ ...target, directions: ANY_DIRECTION }], arrow: false };
  const [led] = layLeaders([leader], board);
  return { ...line, lines: [...line.lines, ...led!.lines], texts: led!.texts };
}
