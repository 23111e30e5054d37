import type { Cut } from './cut.ts';

/**
 * Depth really cut below the worked face, mm, when the stock is not the thickness the cutter was set for.
 *
 * The spindle is set from the table. Run under, the worked face lies on the table and the depth is as set; run over, the
 * other face does, and whatever the stock is thicker is cut deeper: depth + (measured − thickness) (formula 3). On edge the
 * worked face stands against the fence and the depth is as set.
 *
 * @example depthTaken({ run: 'over', depth: 9, … }, { thickness: 20, measured: 20.3 }) // 9.3
 */
export function depthTaken(
  cut: Pick<Cut, 'run' | 'depth'>,
  panel: { readonly thickness: number; readonly measured: number },
): number {
  return cut.run === 'over' ? cut.depth + (panel.measured - panel.thickness) : cut.depth;
}
