import { SAME_LENGTH } from '@fielded/geometry';
import { alongDepth, alongReach } from './moves.ts';

/** A stretch of settings: moved `from` to `to` further in, mm, a cut goes `down` deeper at `from` and `slope` more for each mm. */
export interface MoveStretch {
  readonly from: number;
  readonly to: number;
  readonly down: number;
  readonly slope: number;
}

/**
 * The least (`way` -1) or most (+1) that a cut goes deeper at each place it can be moved to by a ± on its spindle's height and on its
 * fence, mm. Together both fill a rectangle, turned by the tilt; what is given is its lower or its upper side, one stretch or two.
 */
export function deepestMoves(tilt: number, height: number, fence: number, way: -1 | 1): MoveStretch[] {
  const at = (h: number, f: number) => ({ right: alongReach(tilt, h, f), down: alongDepth(tilt, h, f) });
  // From where it is moved out the most to where it is moved in the most.
  const corners = [at(height, -fence), at(way * height, way * fence), at(-height, fence)];
  const stretches = [stretchOf(corners[0]!, corners[1]!), stretchOf(corners[1]!, corners[2]!)];
  const long = stretches.filter(({ from, to }) => to - from > SAME_LENGTH);
  return long.length > 0
    ? long
    : [{ from: corners[1]!.right, to: corners[1]!.right, down: corners[1]!.down, slope: 0 }];
}

interface Moved {
  readonly right: number;
  readonly down: number;
}

function stretchOf(a: Moved, b: Moved): MoveStretch {
  const run = b.right - a.right;
  return { from: a.right, to: b.right, down: a.down, slope: run > SAME_LENGTH ? (b.down - a.down) / run : 0 };
}
