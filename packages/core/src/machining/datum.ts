import type { Cut } from './cut.ts';

/**
 * The depth that is really cut below the worked face, mm, in stock that is not as thick as the cutter was set for.
 *
 * The spindle is set from the table. Run under, the worked face lies on the table and the depth is as set. Run over, the other face
 * lies on the table, and thicker stock is cut deeper by the difference: depth + (measured − thickness) (formula 3). On edge the worked
 * face stands against the fence and the depth is as set.
 *
 * @example depthTaken({ run: 'over', depth: 9, … }, { thickness: 20, measured: 20.3 }) // 9.3
 */
export function depthTaken(
  cut: Pick<Cut, 'run' | 'depth'>,
  panel: { readonly thickness: number; readonly measured: number },
): number {
  return cut.run === 'over' ? cut.depth + (panel.measured - panel.thickness) : cut.depth;
}
