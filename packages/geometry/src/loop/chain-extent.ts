import type { Chain } from '../curve/curve.ts';
import { curveBox } from '../curve/curve-box.ts';

/** The greatest x (how far in from the edge) and the greatest y (how deep below the face) of a chain in cut coordinates, mm; −Infinity for an empty chain. */
export function chainExtent(chain: Chain): { readonly reach: number; readonly depth: number } {
  let reach = Number.NEGATIVE_INFINITY;
  let depth = Number.NEGATIVE_INFINITY;
  for (const c of chain) {
    const box = curveBox(c);
    if (box.x1 > reach) reach = box.x1;
    if (box.y1 > depth) depth = box.y1;
  }
  return { reach, depth };
}
