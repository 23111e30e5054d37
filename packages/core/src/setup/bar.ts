import type { Heights, Run } from './set-up-report.ts';
import type { Work } from './work.ts';

/**
 * The heights above the table at which wood stands at the panel's edge before and after a cut (formula U5): there a bar or a
 * false fence may bear. `before` are the cuts already made. null where no wood is left there,
 * and inside a frame, where no fence stands.
 *
 * On edge the worked face stands against the fence: wood bears above all that is cut off that face.
 */
export function barHeights(work: Work, run: Run, before: readonly Work[]): Heights | null {
  const { cut, thickness } = work;
  if (work.frame?.kind === 'back edge') return null;
  const made = [...before, work];
  if (cut.tilt === Math.PI / 2) {
    const sameFace = made.filter((each) => each.cut.side === cut.side);
    return { from: Math.max(...sameFace.map((each) => each.cut.reach)), to: null };
  }
  const taken = (side: 'front' | 'back') =>
    Math.max(0, ...made.filter((each) => each.cut.side === side).map(({ atEdge }) => atEdge));
  const worked = taken(cut.side);
  const other = taken(cut.side === 'front' ? 'back' : 'front');
  // Under the stock the worked face lies on the table, over it the other one.
  const [low, high] = run === 'under' ? [worked, other] : [other, worked];
  const to = thickness - high;
  return to > low ? { from: low, to } : null;
}
