import type { Board } from './board.ts';
import { addMarks, CROSSED, joinMarks, weighMarks } from './board.ts';
import type { Lettering } from './figure.ts';
import { letter } from './figure.ts';
import type { LeaderDimension } from './leader.ts';
import { ANY_DIRECTION, layLeaders } from './leader.ts';
import type { DrawnDimension, LinearDimension, TextAt } from './linear.ts';
import { drawLinear, isUpright, spanOf, textFits } from './linear.ts';

/** A dimension that stands within the drawing, its line at one of `levels`, the best first. */
export interface InteriorDimension extends LinearDimension {
  readonly levels: readonly number[];
}

const LATER_LEVEL = 2;
/** Where on its dimension line a leader may start but in the middle, in shares of the length, the best first. */
const OTHER_STARTS: readonly number[] = [0.3, 0.7, 0.1, 0.9];

/** Places dimensions within the drawing; a figure that finds no room beside its line gets a leader to free paper. */
export function layInteriors(dimensions: readonly InteriorDimension[], board: Board): DrawnDimension[] {
  return dimensions.map((dimension) => {
    const places = textPlaces(dimension);
    let best: DrawnDimension | undefined;
    let least = CROSSED;
    dimension.levels.forEach((level, rank) => {
      places.forEach(({ at, lettering }, order) => {
        const before = rank * LATER_LEVEL + order * 3;
        if (before >= least) return;
        const drawn = drawLinear(dimension, level, at, lettering);
        const cost = before + weighMarks(drawn.marks, board, least);
        if (cost < least) [best, least] = [drawn, cost];
      });
    });
    if (!best) return withLeader(dimension, board);
    addMarks(best.marks, board);
    return best;
  });
}

function textPlaces(dimension: LinearDimension): { at: TextAt; lettering: Lettering }[] {
  const long = letter(dimension, true);
  const short = letter(dimension, false);
  const places: { at: TextAt; lettering: Lettering }[] = [];
  if (textFits(dimension, long)) places.push({ at: 'middle', lettering: long });
  if (textFits(dimension, short)) {
    for (const at of ['middle', 'low', 'high'] as const) places.push({ at, lettering: short });
  }
  for (const at of ['before', 'after'] as const) places.push({ at, lettering: long }, { at, lettering: short });
  return places;
}

/** Draws the line where its arrows do least harm, and leads its figure away to free paper. */
function withLeader(dimension: InteriorDimension, board: Board): DrawnDimension {
  const lettering = letter(dimension, false);
  const lines = dimension.levels.map((level) => drawLinear(dimension, level, 'nowhere', lettering));
  const costs = lines.map((line, rank) => weighMarks(line.marks, board) + rank * LATER_LEVEL);
  const chosen = costs.indexOf(Math.min(...costs));
  const line = lines[chosen]!;
  const level = dimension.levels[chosen]!;
  addMarks(line.marks, board);
  const { low, high } = spanOf(dimension);
  const startAt = (share: number) => {
    const along = low + share * (high - low);
    const start = isUpright(dimension.side) ? { x: level, y: along } : { x: along, y: level };
    return { ...start, directions: ANY_DIRECTION };
  };
  const spare = OTHER_STARTS.map(startAt);
  const leader: LeaderDimension = { ...dimension, targets: [startAt(0.5)], spare, arrow: false };
  const [led] = layLeaders([leader], board);
  return {
    ...line,
    marks: joinMarks(line.marks, led!.marks),
    lines: [...line.lines, ...led!.lines],
    texts: led!.texts,
    strained: led!.strained === true,
  };
}
