import { loopsBox } from '@fielded/geometry';
import type { Item } from '../scene.ts';
import { group, textBox } from '../scene.ts';
import { layAngles } from './angle.ts';
import type { Board } from './board.ts';
import { newBoard } from './board.ts';
import { layInteriors } from './interior.ts';
import { interruptLines } from './interrupt-lines.ts';
import { layLeaders, leaderEnds } from './leader.ts';
import { dimensionGroup } from './linear.ts';
import { layOrdinates } from './ordinate.ts';
import type { Sketch } from './sketch.ts';
import { layTiers } from './tiers.ts';

/**
 * Lays out all dimensions of a sketch: first ordinates and the tiers round it, then those within it, which keep off the places where
 * leaders will end, then the leaders.
 *
 * Every dimension comes back as one group under its own key. Thin lines are interrupted where a text stands on them.
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
  return interruptLines([...sketch.items, group('dimensions', drawn.map(dimensionGroup))]);
}

/** Puts texts and arrowheads that are part of the drawing itself on the board. */
function keepClearOf(items: readonly Item[], board: Board): void {
  for (const item of items) {
    if (item.kind === 'group') keepClearOf(item.items, board);
    else if (item.kind === 'text') board.texts.push(textBox(item));
    else if (item.kind === 'path' && item.role === 'arrow')
      board.arrows.push(...item.loops.map((loop) => loopsBox([loop])!));
  }
}
