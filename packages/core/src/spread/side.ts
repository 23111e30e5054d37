import { meetCarriers, shiftCurve } from '@fielded/geometry';
import { type CutSurface, depthAt, leastDepth } from './surface.ts';

/** Least depth of the front and of the back surface below its face, over an inserted tongue, mm. */
export interface SideDepths {
  front: number;
  back: number;
}

/**
 * How far below its face the tongue stays at least, 0 to `to` in from the edge, mm, under all the cuts of one side.
 *
 * Each cut's surface is moved `right` (mm, further in) and `down` (mm, deeper) first; where no cut reaches it is 0, the
 * face itself. Where the cuts overlap the deeper one counts. Exact: the least of the deepest lies at an end, at a place
 * where one surface is shallowest, or where two surfaces cross.
 */
export function leastSideDepth(
  surfaces: readonly CutSurface[],
  right: ArrayLike<number>,
  down: ArrayLike<number>,
  to: number,
): number {
  if (surfaces.length === 1) return Math.max(0, down[0]! + leastDepth(surfaces[0]!, -right[0]!, to - right[0]!));
  let deepestAtEnd = 0;
  for (let i = 0; i < surfaces.length; i++) {
    if (!surfaces[i]!.falls) return leastOfDeepest(surfaces, right, down, to);
    const depth = down[i]! + depthAt(surfaces[i]!, to - right[i]!, -1);
    if (depth > deepestAtEnd) deepestAtEnd = depth;
  }
  // All of them rise towards the face: where the tongue ends it is thickest.
  return deepestAtEnd;
}

function leastOfDeepest(
  surfaces: readonly CutSurface[],
  right: ArrayLike<number>,
  down: ArrayLike<number>,
  to: number,
): number {
  const deepest = (x: number, side: -1 | 1) => {
    let depth = 0;
    for (let i = 0; i < surfaces.length; i++) {
      const one = down[i]! + depthAt(surfaces[i]!, x - right[i]!, side);
      if (one > depth) depth = one;
    }
    return depth;
  };
  let least = deepest(0, 1);
  const look = (x: number) => {
    if (x > 0 && x < to) least = Math.min(least, deepest(x, -1), deepest(x, 1));
  };
  if (to > 0) least = Math.min(least, deepest(to, -1));
  for (let i = 0; i < surfaces.length; i++) {
    // A surface may step through another where neither is shallowest.
    for (const piece of surfaces[i]!.pieces) look(piece.x1 + right[i]!);
    for (const place of surfaces[i]!.shallows) look(place.x + right[i]!);
    for (let k = 0; k < i; k++) lookAtCrossings(surfaces, right, down, i, k, look);
  }
  return least;
}

/** Visits every x where the surfaces of two cuts may cross; one that is not on both is a look too many, no harm. */
function lookAtCrossings(
  surfaces: readonly CutSurface[],
  right: ArrayLike<number>,
  down: ArrayLike<number>,
  i: number,
  k: number,
  look: (x: number) => void,
): void {
  const met: number[] = [];
  for (const p of surfaces[i]!.pieces) {
    const moved = shiftCurve(p, right[i]! - right[k]!, down[i]! - down[k]!);
    for (const q of surfaces[k]!.pieces) {
      if (moved.x1 < q.x0 || q.x1 < moved.x0) continue;
      met.length = 0;
      meetCarriers(moved, q, met);
      for (let m = 0; m < met.length; m += 2) look(met[m]! + right[k]!);
    }
  }
}
