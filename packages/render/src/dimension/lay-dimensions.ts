import type { Curve } from '@fielded/core';
import type { Box } from '../geometry/box.ts';
import type { Loop } from '../geometry/path.ts';
import type { Item } from '../scene.ts';
import { group } from '../scene.ts';
import { newBoard } from './board.ts';
import type { InteriorDimension } from './interior.ts';
import { layInteriors } from './interior.ts';
import type { LeaderDimension } from './leader.ts';
import { layLeaders, leaderEnds } from './leader.ts';
import type { LinearDimension } from './linear.ts';
import { dimensionGroup } from './linear.ts';
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
}

/**
 * Lays out all dimensions of a sketch: first the tiers round it, then those within it, which keep off the places where
 * leaders will end, then the leaders.
 *
 * Every dimension comes back as one group under its own key.
 */
export function layDimensions(sketch: Sketch): Item[] {
  const board = newBoard(sketch.outlines, sketch.woods);
  const tiers = layTiers(sketch.tiers, sketch.around, board);
  board.arrows.push(...sketch.leaders.flatMap(leaderEnds));
  const interiors = layInteriors(sketch.interiors, board);
  const drawn = [...tiers, ...interiors, ...layLeaders(sketch.leaders, board)];
  return [...sketch.items, group('dimensions', drawn.map(dimensionGroup))];
}
