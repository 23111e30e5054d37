import type { Box } from '../geometry/box.ts';
import { arrowBox, arrowhead } from './arrow.ts';
import type { Board, Stretch } from './board.ts';
import { addMarks, stretchesCross, weighMarks } from './board.ts';
import type { Figure } from './figure.ts';
import { figureTexts, figureWidth } from './figure.ts';
import type { Drawn, Point } from './linear.ts';
import { drawnFigure } from './linear.ts';

/** A figure with a line that leads to what it is about. */
export interface LeaderDimension extends Figure {
  /** Points that the leader may lead to, the best first. */
  readonly targets: readonly Target[];
  /** false: the line starts without an arrowhead, as from a dimension line whose figure found no room. */
  readonly arrow: boolean;
}

export interface Target extends Point {
  /** The directions the leader may leave in, radians, 0 to the right and growing downwards. */
  readonly directions: readonly number[];
}

/** 15° steps, none of them level, plumb or along the hatch. */
export const ANY_DIRECTION: readonly number[] = [
  -60, -30, -120, -150, 60, 30, 120, 150, -75, -105, 75, 105, -15, 15, -165, 165,
].map((degrees) => (degrees * Math.PI) / 180);

const LENGTHS: readonly number[] = [8, 11, 14, 18, 22, 27, 33, 40, 48, 58, 70, 84, 100, 120, 145, 175, 210, 260, 320];
const SHELF_END = 1;
const PER_MM = 0.5;
/** A leader that crosses an outline costs as much as one this much longer, per crossing. */
const CROSSES_OUTLINE = 10;
const LATER_TARGET = 4;

/** The arrowhead that a leader will most likely end in, so that nothing else is put there before. */
export function leaderEnds(leader: LeaderDimension): Box[] {
  const [target] = leader.targets;
  const [direction] = target?.directions ?? [];
  if (!leader.arrow || !target || direction === undefined) return [];
  return [arrowBox(arrowhead(target.x, target.y, -Math.cos(direction), -Math.sin(direction)))];
}

/**
 * Places leaders one after the other where their texts are clear of everything: of all directions and lengths the one
 * that does least harm, shorter before longer. Directions are tried in the order given.
 */
export function layLeaders(leaders: readonly LeaderDimension[], board: Board): Drawn[] {
  return leaders.map((leader) => {
    let best: { cost: number; drawn: Drawn } | undefined;
    leader.targets.forEach((target, rank) => {
      target.directions.forEach((direction, turn) => {
        for (const length of LENGTHS) {
          const start = length * PER_MM + rank * LATER_TARGET + turn * 0.6;
          if (best && start >= best.cost) break;
          const drawn = layOne(leader, target, direction, length);
          const cost = start + weighMarks(drawn.marks, board) + outlinesCrossed(drawn.lines, board) * CROSSES_OUTLINE;
          if (!best || cost < best.cost) best = { cost, drawn };
        }
      });
    });
    if (!best) throw new RangeError(`leader ${leader.key} has nowhere to lead to`);
    addMarks(best.drawn.marks, board);
    return best.drawn;
  });
}

function layOne(leader: LeaderDimension, target: Target, direction: number, length: number): Drawn {
  const dx = Math.cos(direction);
  const dy = Math.sin(direction);
  const kneeX = target.x + dx * length;
  const kneeY = target.y + dy * length;
  const toRight = dx >= 0;
  const shelfEnd = kneeX + (toRight ? 1 : -1) * (figureWidth(leader, true) + 2 * SHELF_END);
  const texts = figureTexts(leader, (toRight ? kneeX : shelfEnd) + SHELF_END, kneeY, false, true);
  const arrows = leader.arrow ? [arrowhead(target.x, target.y, -dx, -dy)] : [];
  const lines = [
    { x0: target.x, y0: target.y, x1: kneeX, y1: kneeY },
    { x0: kneeX, y0: kneeY, x1: shelfEnd, y1: kneeY },
  ];
  return drawnFigure(leader, lines, arrows, texts);
}

/** How often the lines cross an outline away from their target. Curves are taken as chords: near enough to choose by. */
function outlinesCrossed(lines: readonly Stretch[], board: Board): number {
  const leading = lines[0]!;
  const skip = 0.06;
  const fromX = leading.x0 + (leading.x1 - leading.x0) * skip;
  const fromY = leading.y0 + (leading.y1 - leading.y0) * skip;
  const rest = { x0: fromX, y0: fromY, x1: leading.x1, y1: leading.y1 };
  return board.outlines.filter(({ curve }) => stretchesCross(rest, curve)).length;
}
