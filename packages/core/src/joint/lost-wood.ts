import {
  FIT_TOLERANCE,
  levelThread,
  liesOn,
  momentsUnder,
  threadChain,
  threadHeight,
  walkStrips,
} from '@fielded/geometry';
import type { Sweep } from '../machining/sweep.ts';

/** Wood that a drawn profile keeps and its turning knife takes: mm², and where, mm in from the edge and below the worked face. */
export interface LostWood {
  readonly area: number;
  readonly fromEdge: readonly [number, number];
  readonly below: readonly [number, number];
}

const STOCK = 0;
const DRAWN = 1;
const SWEPT = 2;

/**
 * Compares what is drawn with what is swept, within stock `width` × `thickness`; null where the sweep takes nothing more, or nothing as thick
 * as the tolerance that outlines are read within.
 *
 * Exact, strip by strip in cut coordinates: lost is what lies inside the stock and the swept region but not inside the
 * drawn one (formula 11).
 */
export function findLostWood(sweep: Sweep, thickness: number, width: number): LostWood | null {
  if (sweep.swept === sweep.drawn) return null;
  const threads = [levelThread(0, width, 0, STOCK, 0), levelThread(0, width, thickness, STOCK, 1)];
  threadChain(sweep.drawn, DRAWN, threads);
  threadChain(sweep.swept, SWEPT, threads);

  let area = 0;
  const box = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  walkStrips(threads, 0, width, (strip) => {
    const { left, right, order, heights } = strip;
    // From the deep side, where every region ends, up to the face.
    const inside = [false, false, false];
    for (let i = order.length - 1; i > 0; i--) {
      inside[order[i]!.of] = !inside[order[i]!.of];
      const lost = inside[STOCK] && inside[SWEPT] && !inside[DRAWN];
      if (!lost || liesOn(strip, i - 1, i)) continue;
      const deep = order[i]!;
      const shallow = order[i - 1]!;
      area += momentsUnder(deep, left, right).area - momentsUnder(shallow, left, right).area;
      box[0] = Math.min(box[0]!, left);
      box[1] = Math.max(box[1]!, right);
      box[2] = Math.min(box[2]!, threadHeight(shallow, left), threadHeight(shallow, right), heights[i - 1]!);
      box[3] = Math.max(box[3]!, threadHeight(deep, left), threadHeight(deep, right), heights[i]!);
    }
  });
  // A drawing is read within this tolerance: what is thinner all along was never drawn.
  const extent = Math.hypot(box[1]! - box[0]!, box[3]! - box[2]!);
  return area === 0 || area <= FIT_TOLERANCE * extent
    ? null
    : { area, fromEdge: [box[0]!, box[1]!], below: [box[2]!, box[3]!] };
}
