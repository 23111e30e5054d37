import type { Cut } from '../machining/cut.ts';
import { movePlace } from './moves.ts';
import type { CutSurface, DepthPlace } from './surface.ts';

/** One cut of a side, by its place in a list of moves. */
interface SideCut {
  readonly surface: CutSurface;
  readonly place: number;
  readonly tilt: number;
  readonly over: boolean;
}

/** How each cut of a side is moved: further in (mm), deeper (mm), and how much deeper for each mm in from the panel's edge. */
export interface Shifts {
  readonly right: Float64Array;
  readonly down: Float64Array;
  readonly lean: Float64Array;
}

/** One side of the panel: its cuts' surfaces at their settings, room for how far each is moved, and the place found last. */
export interface PanelSide {
  readonly cuts: readonly SideCut[];
  readonly surfaces: readonly CutSurface[];
  readonly shifts: Shifts;
  /** Whether every surface nowhere gets deeper on the way in. */
  readonly falls: boolean;
  /** Where and what `leastPlace` found last. */
  readonly found: DepthPlace;
}

export function createSide(side: 'front' | 'back', cuts: readonly Cut[], surfaces: readonly CutSurface[]): PanelSide {
  const mine = cuts.flatMap((cut, index): SideCut[] => {
    const { tilt, run } = cut;
    return cut.side === side
      ? [{ surface: surfaces[index]!, place: movePlace(index), tilt, over: run === 'over' }]
      : [];
  });
  const room = () => new Float64Array(mine.length);
  return {
    cuts: mine,
    surfaces: mine.map(({ surface }) => surface),
    shifts: { right: room(), down: room(), lean: room() },
    falls: mine.every(({ surface }) => surface.falls),
    found: { x: 0, depth: 0 },
  };
}
