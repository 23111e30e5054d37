import {
  FIT_TOLERANCE,
  levelThread,
  liesOn,
  momentsUnder,
  SAME_LENGTH,
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

/** A patch of lost wood: its area, mm², and its box, mm. */
interface Patch {
  area: number;
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/**
 * Compares what is drawn with what is swept, within stock `width` × `thickness`; null where the sweep takes nothing more.
 *
 * Exact, strip by strip in cut coordinates: lost wood lies inside the stock and the swept region but outside the drawn one (formula
 * 11). A drawing is read to a tolerance: a patch that is no thicker on average was not drawn, and where there are only such patches
 * nothing is lost.
 */
export function findLostWood(sweep: Sweep, thickness: number, width: number): LostWood | null {
  const patches = findPatches(sweep, thickness, width);
  const isDrawn = ({ area, left, right, top, bottom }: Patch) =>
    area > FIT_TOLERANCE * Math.hypot(right - left, bottom - top);
  if (!patches.some(isDrawn)) return null;
  return {
    area: patches.reduce((sum, { area }) => sum + area, 0),
    fromEdge: [Math.min(...patches.map(({ left }) => left)), Math.max(...patches.map(({ right }) => right))],
    below: [Math.min(...patches.map(({ top }) => top)), Math.max(...patches.map(({ bottom }) => bottom))],
  };
}

/** The lost wood as patches; two are separate where no wood is lost over some x between them. */
function findPatches(sweep: Sweep, thickness: number, width: number): Patch[] {
  if (sweep.swept === sweep.drawn) return [];
  const threads = [levelThread(0, width, 0, STOCK, 0), levelThread(0, width, thickness, STOCK, 1)];
  threadChain(sweep.drawn, DRAWN, threads);
  threadChain(sweep.swept, SWEPT, threads);

  const patches: Patch[] = [];
  walkStrips(threads, 0, width, (strip) => {
    const { left, right, order, heights } = strip;
    // Start at the deepest thread, outside every region, and go up to the face.
    const inside = [false, false, false];
    for (let i = order.length - 1; i > 0; i--) {
      inside[order[i]!.of] = !inside[order[i]!.of];
      const lost = inside[STOCK] && inside[SWEPT] && !inside[DRAWN];
      if (!lost || liesOn(strip, i - 1, i)) continue;
      // Add this layer to the patch that the strip before reached, or begin a new patch.
      const deep = order[i]!;
      const shallow = order[i - 1]!;
      let patch = patches.at(-1);
      if (patch === undefined || left - patch.right > SAME_LENGTH) {
        patch = { area: 0, left, right, top: Number.POSITIVE_INFINITY, bottom: Number.NEGATIVE_INFINITY };
        patches.push(patch);
      }
      patch.area += momentsUnder(deep, left, right).area - momentsUnder(shallow, left, right).area;
      patch.right = right;
      patch.top = Math.min(patch.top, threadHeight(shallow, left), threadHeight(shallow, right), heights[i - 1]!);
      patch.bottom = Math.max(patch.bottom, threadHeight(deep, left), threadHeight(deep, right), heights[i]!);
    }
  });
  return patches;
}
