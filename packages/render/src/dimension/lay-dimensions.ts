import type { Curve } from '@fielded/core';
import type { Box } from '../geometry/box.ts';
import type { Loop } from '../geometry/path.ts';
import { loopsBox } from '../geometry/path.ts';
import type { Item } from '../scene.ts';
import { group, itemsBox, textBox } from '../scene.ts';
import type { AngleDimension } from './angle.ts';
import { layAngles } from './angle.ts';
import type { Board } from './board.ts';
import { newBoard } from './board.ts';
import { breakSketch } from './break-sketch.ts';
import type { InteriorDimension } from './interior.ts';
import { layInteriors } from './interior.ts';
import type { LeaderDimension } from './leader.ts';
import { layLeaders, leaderEnds } from './leader.ts';
import type { LinearDimension } from './linear.ts';
import { dimensionGroup } from './linear.ts';
import type { OrdinateDimension } from './ordinate.ts';
import { layOrdinates } from './ordinate.ts';
import { layTiers } from './tiers.ts';

/** A part of a drawing before its dimensions are laid out: what is drawn, and what has to be said about it. Paper mm. */
export interface Sketch {
  readonly items: readonly Item[];
  /** Lines that no text may cross. */
  readonly outlines: readonly Curve[];
  /** Closed loops of hatched wood. */
  readonly woods: readonly Loop[];
  /** Tiers of dimensions stand round this. */
  readonly around: Box;
  readonly tiers: readonly LinearDimension[];
  readonly interiors: readonly InteriorDimension[];
  readonly leaders: readonly LeaderDimension[];
  readonly angles?: readonly AngleDimension[];
  readonly ordinates?: readonly OrdinateDimension[];
}

/**
 * Lays out all dimensions of a sketch: first ordinates and the tiers round it, then those within it, which keep off the places where
 * leaders will end, then the leaders.
 *
 * Every dimension comes back as one group under its own key.
 */
export function layDimensions(sketch: Sketch): Item[] {
  const board = newBoard(sketch.outlines, sketch.woods);
  keepClearOf(sketch.items, board);
  const ordinates = layOrdinates(sketch.ordinates ?? [], sketch.around, board);
  const tiers = layTiers(sketch.tiers, ordinates.around, board);
  board.arrows.push(...sketch.leaders.flatMap(leaderEnds));
  const angles = layAngles(sketch.angles ?? [], board);
  const interiors = layInteriors(sketch.interiors, board);
  const leaders = layLeaders(sketch.leaders, board);
  const drawn = [...ordinates.drawn, ...tiers, ...angles, ...interiors, ...leaders];
  return [...sketch.items, group('dimensions', drawn.map(dimensionGroup))];
}

/** Room on the paper, mm. */
export interface Room {
  readonly width: number;
  readonly height: number;
}

/** Lays out a sketch so that it fits the room at its own scale: where it is too wide or too high it is broken, not shrunk, as far as that goes. */
export function layWithin(sketch: Sketch, room: Room | null): Item[] {
  let current = sketch;
  let items = layDimensions(current);
  if (!room) return items;
  for (let round = 0; round < 6; round += 1) {
    const box = itemsBox(items)!;
    const wide = box.x1 - box.x0 - room.width;
    const high = box.y1 - box.y0 - room.height;
    if (wide <= 0 && high <= 0) break;
    const broken = wide > 0 ? breakSketch(current, 'x', wide + 0.5) : breakSketch(current, 'y', high + 0.5);
    if (broken === current) break;
    current = broken;
    items = layDimensions(current);
  }
  return items;
}

/** Puts texts and arrowheads that are part of the drawing itself on the board. */
function keepClearOf(items: readonly Item[], board: Board): void {
  for (const item of items) {
    if (item.kind === 'group') keepClearOf(item.items, board);
    else if (item.kind === 'text') board.texts.push(textBox(item));
    else if (item.role === 'arrow') board.arrows.push(...item.loops.map((loop) => loopsBox([loop])!));
  }
}
