import { boxesOverlap, growBox, loopsBox } from '@fielded/geometry';
import type { Item } from '../scene.ts';
import { group, textBox } from '../scene.ts';
import { layAngles } from './angle.ts';
import type { Board } from './board.ts';
import { newBoard } from './board.ts';
import { layInteriors } from './interior.ts';
import { interruptLines } from './interrupt-lines.ts';
import { layLeaders, leaderEnds } from './leader.ts';
import { type DrawnDimension, dimensionGroup } from './linear.ts';
import { layOrdinates } from './ordinate.ts';
import type { Sketch } from './sketch.ts';
import { layTiers } from './tiers.ts';

/** Whether leaders are laid before the tiers, and how much further out than usual the tiers stand, mm. */
interface Plan {
  readonly leadersFirst: boolean;
  readonly out: number;
}

/** Tried in this order until nothing is wrong: where a leader finds no place, it is laid earlier, or the tiers make room. */
const PLANS: readonly Plan[] = [0, 5, 10, 15].flatMap((out) => [
  { leadersFirst: false, out },
  { leadersFirst: true, out },
]);

/**
 * Lays out all dimensions of a sketch: first ordinates and the tiers round it, then those within it, which keep off the places where
 * leaders will end, then the leaders.
 *
 * Every dimension comes back as one group under its own key. Thin lines are interrupted where a text stands on them.
 */
export function layDimensions(sketch: Sketch): Item[] {
  let drawn: DrawnDimension[] = [];
  let least = Infinity;
  for (const plan of PLANS) {
    const laid = layByPlan(sketch, plan);
    const harm = harmOf(laid);
    if (harm < least) [drawn, least] = [laid, harm];
    if (least === 0) break;
  }
  return interruptLines([...sketch.items, group('dimensions', drawn.map(dimensionGroup))]);
}

function layByPlan(sketch: Sketch, { leadersFirst, out }: Plan): DrawnDimension[] {
  const board = newBoard(sketch.outlines, sketch.woods);
  keepClearOf(sketch.items, board);
  const ordinates = layOrdinates(sketch.ordinates ?? [], sketch.around, board);
  const early = leadersFirst ? layLeaders(sketch.leaders, board) : [];
  const tiers = layTiers(sketch.tiers, growBox(ordinates.around, out), board);
  if (!leadersFirst) board.arrows.push(...sketch.leaders.flatMap(leaderEnds));
  const angles = layAngles(sketch.angles ?? [], board);
  const interiors = layInteriors(sketch.interiors, board);
  const leaders = leadersFirst ? early : layLeaders(sketch.leaders, board);
  return [...ordinates.drawn, ...tiers, ...angles, ...interiors, ...leaders];
}

/** What is wrong with a layout: texts over texts and arrows, then leaders that are long or run through a text. */
function harmOf(drawn: readonly DrawnDimension[]): number {
  let harm = 0;
  drawn.forEach(({ marks, strained }, i) => {
    if (strained) harm += 1;
    drawn.forEach((other, k) => {
      if (i === k) return;
      for (const text of marks.texts) {
        for (const box of other.marks.texts) if (boxesOverlap(text, box)) harm += 100;
        for (const box of other.marks.arrows) if (boxesOverlap(text, box)) harm += 100;
      }
    });
  });
  return harm;
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
