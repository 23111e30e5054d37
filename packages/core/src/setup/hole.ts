import type { Machine, Rules } from '../shop/shop.ts';
import type { Hole, Run } from './set-up-report.ts';
import type { Work } from './work.ts';

/**
 * The hole in the table that a tool needs, and the smallest ring that leaves it (formula U3): the cutting circle under the
 * stock, the head's body over it where the seat lies below the table. null where nothing of it stands in the table, or where
 * the seat of a head above the stock is not known.
 */
export function findHole(work: Work, run: Run, seat: number | null, machine: Machine, rules: Rules): Hole | null {
  const { head, cut } = work;
  const clearance = 2 * rules.fenceClearance;
  const below = run === 'under' || cut.tilt === Math.PI / 2;
  if (!below && (seat === null || seat >= 0)) return null;
  // A tilted spindle leaves the table in an ellipse.
  const stretch = cut.tilt === Math.PI / 2 ? 1 : Math.cos(cut.tilt);
  const needed = (below ? head.cuttingDiameter : head.bodyDiameter) / stretch + clearance;
  const holes = [...machine.rings, machine.opening].filter((hole) => hole >= needed - SAME_HOLE);
  return { needed, ring: holes.length === 0 ? null : Math.min(...holes) };
}

/** Rounding of diameters in inches, mm. */
const SAME_HOLE = 1e-9;
