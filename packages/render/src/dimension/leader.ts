import type { Point } from '@fielded/geometry';
import { type Box, lineMeetsBox } from '@fielded/geometry';
import { arrowBox } from './arrow.ts';
import type { Board, LineStretch } from './board.ts';
import { addMarks, stretchesCross, UNREADABLE, weighMarks } from './board.ts';
import type { Figure, Lettering } from './figure.ts';
import { letter } from './figure.ts';
import type { DrawnDimension } from './linear.ts';
import { drawnFigure } from './linear.ts';

/** A figure with a line that leads to what it is about. */
export interface LeaderDimension extends Figure {
  /** Points that the leader may lead to, the best first. */
  readonly targets: readonly LeaderTarget[];
  /** Further points, tried only where none of those gives a clear place. */
  readonly spare?: readonly LeaderTarget[];
  /** false: the line starts without an arrowhead, as from a dimension line whose figure found no room. */
  readonly arrow: boolean;
}

export interface LeaderTarget extends Point {
  /** The directions the leader may leave in, radians, 0 to the right and growing downwards. */
  readonly directions: readonly number[];
}

/** 15° steps, none of them level, plumb or along the hatch. */
export const ANY_DIRECTION: readonly number[] = [
  -60, -30, -120, -150, 60, 30, 120, 150, -75, -105, 75, 105, -15, 15, -165, 165,
].map((degrees) => (degrees * Math.PI) / 180);

/** Half of the 15° steps, radians. */
const HALF_STEP = (7.5 * Math.PI) / 180;
/** Leaders are no longer than 25 mm; only where that leaves no place at all for the text may they be. */
const LENGTHS: readonly number[] = [8, 9.5, 11, 12.5, 14, 16, 18, 20, 22.5, 25];
const TOO_LONG: readonly number[] = [29, 34, 40, 48, 58, 70, 84, 100, 120, 145, 175, 210, 260, 320];
/** Directions within this of the hatching's 45° look like a line of it, radians. */
const NEAR_HATCH = (6 * Math.PI) / 180;
const MOST_LENGTH = 25;
const SHELF_END = 1;
const PER_MM = 0.5;
/** A leader that crosses an outline costs as much as one this much longer, per crossing. */
const CROSSES_OUTLINE = 10;
/** A leader through a text would have to be interrupted: nearly as bad as a text that cannot be read. */
const CROSSES_TEXT = 500;
/** A shelf that lies on another level line, or all but, is taken for a part of it. */
const SHELF_ON_LINE = 30;
const BESIDE = 0.8;
/** A leader this near a text is taken to run through it, mm. */
const CLEAR_OF_TEXT = 0.3;
const LATER_TARGET = 2;
const LATER_DIRECTION = 0.6;

/** The arrowhead that a leader will most likely end in, so that nothing else is put there before. */
export function leaderEnds(leader: LeaderDimension): Box[] {
  const [target] = leader.targets;
  const [direction] = target?.directions ?? [];
  if (!leader.arrow || !target || direction === undefined) return [];
  return [arrowBox({ x: target.x, y: target.y, dx: -Math.cos(direction), dy: -Math.sin(direction) })];
}

/**
 * Places leaders one after the other where their texts are clear of everything: of all directions and lengths the one
 * that does least harm, shorter before longer, and directions in the order given. Only where none of those is clear are the
 * directions between them and the spare targets tried, and then greater lengths.
 */
export function layLeaders(leaders: readonly LeaderDimension[], board: Board): DrawnDimension[] {
  return leaders.map((leader) => {
    const targets = clearOfHatch(leader.targets);
    let best = bestPlace(leader, targets, LENGTHS, board);
    const more = [...between(targets), ...clearOfHatch(leader.spare ?? [])];
    if (best.cost >= UNREADABLE) best = lesserHarm(best, bestPlace(leader, more, LENGTHS, board));
    if (best.cost >= UNREADABLE) best = lesserHarm(best, bestPlace(leader, targets, TOO_LONG, board));
    const { drawn, cost, length } = best;
    if (!drawn) throw new RangeError(`leader ${leader.key} has nowhere to lead to`);
    addMarks(drawn.marks, board);
    return length > MOST_LENGTH || cost >= CROSSES_TEXT ? { ...drawn, strained: true } : drawn;
  });
}

/** A way to draw a leader, with the harm it does; none yet where `drawn` is null. */
interface LeaderPlace {
  readonly drawn: DrawnDimension | null;
  readonly cost: number;
  readonly length: number;
}

function lesserHarm(a: LeaderPlace, b: LeaderPlace): LeaderPlace {
  return b.cost < a.cost ? b : a;
}

/** The least harmful of all targets, directions and lengths. */
function bestPlace(
  leader: LeaderDimension,
  targets: readonly LeaderTarget[],
  lengths: readonly number[],
  board: Board,
): LeaderPlace {
  const lettering = letter(leader, true);
  let best: LeaderPlace = { drawn: null, cost: Infinity, length: 0 };
  for (const length of lengths) {
    targets.forEach((target, rank) => {
      target.directions.forEach((direction, turn) => {
        const before = length * PER_MM + rank * LATER_TARGET + turn * LATER_DIRECTION;
        if (before >= best.cost) return;
        // What is quickly weighed comes first: most places are given up before anything is lettered.
        const lines = leadingLines(lettering, target, direction, length);
        let cost = before + outlinesCrossed(lines[0], board) * CROSSES_OUTLINE;
        if (cost >= best.cost) return;
        cost += textsCrossed(lines, board) * CROSSES_TEXT;
        cost += linesAlong(lines[1], board) * SHELF_ON_LINE;
        if (cost >= best.cost) return;
        const drawn = layOne(leader, lettering, lines, direction);
        cost += weighMarks(drawn.marks, board, best.cost - cost);
        if (cost < best.cost) best = { drawn, cost, length };
      });
    });
  }
  return best;
}

/** The same targets with the directions half way between; none for a radius, whose leader is square to its arc. */
function between(targets: readonly LeaderTarget[]): readonly LeaderTarget[] {
  const free = targets.filter(({ directions }) => directions.length > 2);
  return clearOfHatch(
    free.map((target) => ({ ...target, directions: target.directions.map((direction) => direction + HALF_STEP) })),
  );
}

/** The targets without directions along the hatching, unless nothing would be left. */
function clearOfHatch(targets: readonly LeaderTarget[]): readonly LeaderTarget[] {
  const along = (direction: number) => {
    const quarter = Math.PI / 2;
    const off = (((direction - quarter / 2) % quarter) + quarter) % quarter;
    return Math.min(off, quarter - off) < NEAR_HATCH;
  };
  const clear = targets.map((target) => ({ ...target, directions: target.directions.filter((way) => !along(way)) }));
  return clear.some(({ directions }) => directions.length > 0) ? clear : targets;
}

/** The line that leads from a target, and the shelf at its end that the text stands on. */
type LeadingLines = readonly [leading: LineStretch, shelf: LineStretch];

function leadingLines(lettering: Lettering, target: Point, direction: number, length: number): LeadingLines {
  const dx = Math.cos(direction);
  const kneeX = target.x + dx * length;
  const kneeY = target.y + Math.sin(direction) * length;
  const shelfEnd = kneeX + (dx >= 0 ? 1 : -1) * (lettering.width + 2 * SHELF_END);
  return [
    { x0: target.x, y0: target.y, x1: kneeX, y1: kneeY },
    { x0: kneeX, y0: kneeY, x1: shelfEnd, y1: kneeY },
  ];
}

function layOne(leader: LeaderDimension, lettering: Lettering, lines: LeadingLines, direction: number): DrawnDimension {
  const [{ x0, y0 }, shelf] = lines;
  const arrows = leader.arrow ? [{ x: x0, y: y0, dx: -Math.cos(direction), dy: -Math.sin(direction) }] : [];
  return drawnFigure(leader, lines, arrows, lettering, Math.min(shelf.x0, shelf.x1) + SHELF_END, shelf.y0, false);
}

function textsCrossed(lines: LeadingLines, board: Board): number {
  let count = 0;
  for (const box of board.texts) {
    for (const { x0, y0, x1, y1 } of lines) {
      if (!lineMeetsBox(x0, y0, x1, y1, box, CLEAR_OF_TEXT)) continue;
      count += 1;
      break;
    }
  }
  return count;
}

/** How many level lines and edges a shelf lies on, or runs close beside for more than 1 mm. */
function linesAlong(shelf: LineStretch, board: Board): number {
  let count = 0;
  for (const other of board.lines) if (runsAlong(shelf, other)) count += 1;
  for (const { curve } of board.outlines) if (runsAlong(shelf, curve)) count += 1;
  return count;
}

function runsAlong({ x0, x1, y0 }: LineStretch, other: LineStretch): boolean {
  if (Math.abs(other.y0 - y0) >= BESIDE || Math.abs(other.y1 - y0) >= BESIDE) return false;
  const [low, high] = [
    Math.max(Math.min(x0, x1), Math.min(other.x0, other.x1)),
    Math.min(Math.max(x0, x1), Math.max(other.x0, other.x1)),
  ];
  return high - low > 1;
}

/** How often a leader crosses an outline away from its target. Curves are taken as chords: near enough to choose by. */
function outlinesCrossed(leading: LineStretch, board: Board): number {
  const skip = 0.06;
  const x0 = leading.x0 + (leading.x1 - leading.x0) * skip;
  const y0 = leading.y0 + (leading.y1 - leading.y0) * skip;
  const rest = { x0, y0, x1: leading.x1, y1: leading.y1 };
  let count = 0;
  for (const { curve } of board.outlines) if (stretchesCross(rest, curve)) count += 1;
  return count;
}
