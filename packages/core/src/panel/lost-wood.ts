import { areaBetween } from '../geometry/moments.ts';
import { heightAt, type Piece, splitCurve } from '../geometry/piece.ts';
import { walkStrips } from '../geometry/strips.ts';
import type { Sweep } from '../machining/sweep.ts';
import { SLIVER } from '../tolerance.ts';

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
 * Compares what is drawn with what is swept, within stock `width` × `thickness`; null where the sweep takes nothing more.
 *
 * Exact, strip by strip in cut coordinates: lost is what lies inside the stock and the swept region but not inside the
 * drawn one (formula 11).
 */
export function findLostWood(sweep: Sweep, thickness: number, width: number): LostWood | null {
  if (sweep.swept === sweep.drawn) return null;
  const pieces: Piece[] = [];
  const face = (y: number) => ({ x0: 0, y0: y, x1: width, y1: y, cx: 0, cy: 0, r: 0, turn: 0 }) as const;
  splitCurve(face(0), STOCK, pieces);
  splitCurve(face(thickness), STOCK, pieces);
  for (const c of sweep.drawn) splitCurve(c, DRAWN, pieces);
  for (const c of sweep.swept) splitCurve(c, SWEPT, pieces);

  let area = 0;
  const box = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  walkStrips(pieces, 0, width, ({ left, right, order, heights }) => {
    // From the deep side, where every region ends, up to the face.
    const inside = [false, false, false];
    for (let i = order.length - 1; i > 0; i--) {
      inside[order[i]!.of] = !inside[order[i]!.of];
      const lost = inside[STOCK] && inside[SWEPT] && !inside[DRAWN];
      if (!lost || heights[i]! - heights[i - 1]! <= SLIVER) continue;
      const deep = order[i]!;
      const shallow = order[i - 1]!;
      area += areaBetween(shallow, deep, left, right);
      box[0] = Math.min(box[0]!, left);
      box[1] = Math.max(box[1]!, right);
      box[2] = Math.min(box[2]!, heightAt(shallow, left), heightAt(shallow, right), heights[i - 1]!);
      box[3] = Math.max(box[3]!, heightAt(deep, left), heightAt(deep, right), heights[i]!);
    }
  });
  return area === 0 ? null : { area, fromEdge: [box[0]!, box[1]!], below: [box[2]!, box[3]!] };
}
