import { type Arrangement, followThickness, LEAST_SHOWN } from './arrangements.ts';
import { createJoint, type Joint, type Swelling } from './joint.ts';
import type { JointSizes, SpreadLimits } from './limits.ts';
import { movePlace } from './moves.ts';
import { listSources, type Source, UNKNOWN } from './sources.ts';
import { stackFigure } from './stack.ts';

/** The two cuts that both heads make at once, by their place in running order. */
export interface StackedCuts {
  readonly lower: number;
  readonly upper: number;
}

/**
 * The clearance's stack with both heads on one spindle (formula U11): one height and one fence for both cuts, and the spacer
 * between them. Raising the spindle cuts the lower face deeper and the upper one as much less, so that the tongue follows
 * neither the height nor the stock; a thicker spacer thickens it one for one.
 */
export function stackedArrangement(
  job: JointSizes,
  limits: SpreadLimits,
  swelling: Swelling,
  stacked: StackedCuts,
): Arrangement {
  const runs = job.cuts.map((_, index) => (index === stacked.upper ? ('over' as const) : ('under' as const)));
  const joint = tieCuts(createJoint(job, runs, swelling), stacked);
  const stack = stackFigure(joint, stackSources(job, limits, stacked), 'clearance');
  const byThickness = followThickness(joint, job.panel.measured, Math.max(limits.thickness, LEAST_SHOWN));
  return { runs, given: false, stacked: true, ...stack, byThickness };
}

/** The joint with the two cuts tied: the lower one's moves are the spindle's and the fence's, the upper one's height the spacer. */
function tieCuts(joint: Joint, { lower, upper }: StackedCuts): Joint {
  const [low, high] = [movePlace(lower), movePlace(upper)];
  const moved = new Float64Array(joint.moveCount);
  // Its sides no longer move each for itself.
  const { sides: _, ...alone } = joint;
  return {
    ...alone,
    measure: (moves, figures, insertion) => {
      moved.set(moves as ArrayLike<number>);
      // Both rise together, and a thicker spacer lifts the upper head alone: higher is shallower there.
      moved[high] = -moves[low]! - moves[high]!;
      moved[high + 1] = moves[low + 1]!;
      joint.measure(moved, figures, insertion);
    },
  };
}

/** The sources of a joint whose two cuts are tied. */
function stackSources(job: JointSizes, limits: SpreadLimits, { lower, upper }: StackedCuts): Source[] {
  const [low, high] = [movePlace(lower), movePlace(upper)];
  const own = [low, low + 1, high, high + 1];
  const common = listSources(job.cuts, limits).filter(({ place }) => !own.includes(place));
  return [
    ...common,
    { name: 'heads.height', plusMinus: limits.height, place: low, sense: UNKNOWN },
    { name: 'heads.fence', plusMinus: limits.fence, place: low + 1, sense: UNKNOWN },
    { name: 'spacer', plusMinus: limits.spacer ?? 0, place: high, sense: UNKNOWN },
  ];
}
