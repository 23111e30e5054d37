import type { Cut } from '../machining/cut.ts';
import type { JointFigures } from './joint.ts';
import type { SpreadLimits } from './limits.ts';
import { MOVE, movePlace } from './moves.ts';

/** A figure of a joint that has a spread. */
export type Figure = keyof JointFigures;

/** One size that is never exact. */
export interface Source {
  /** `panel.thickness`, `frame.groove.width`, `film`, `moisture`, or a cut's name with `.height` (spindle) or `.fence`. */
  readonly name: string;
  /** mm, or points of % for moisture. */
  readonly plusMinus: number;
  /** Its place in a list of moves. */
  readonly place: number;
  /** For each figure: +1 if it can only grow with this size, -1 only shrink, 0 if that depends on the shapes. */
  readonly sense: Readonly<Record<Figure, -1 | 0 | 1>>;
}

const UNKNOWN = { clearance: 0, frontMost: 0, frontLeast: 0 } as const;
const DEEPER = {
  front: { clearance: 1, frontMost: 1, frontLeast: 1 },
  back: { clearance: 1, frontMost: 1, frontLeast: -1 },
} as const;

/**
 * Every source of spread in a joint, those of no size included.
 *
 * @throws RangeError for a ± that is negative or not a number, naming it.
 */
export function listSources(cuts: readonly Cut[], limits: SpreadLimits): Source[] {
  for (const [name, plusMinus] of Object.entries(limits)) {
    if (!(plusMinus >= 0)) throw new RangeError(`spread.${name} is a ± and must be 0 or more, got ${plusMinus}`);
  }
  return [
    { name: 'panel.thickness', plusMinus: limits.thickness, place: MOVE.thickness, sense: UNKNOWN },
    ...cuts.flatMap((cut, index) => cutSources(cut, movePlace(index), limits)),
    {
      name: 'frame.groove.width',
      plusMinus: limits.grooveWidth,
      place: MOVE.grooveWidth,
      sense: { clearance: 1, frontMost: 1, frontLeast: -1 },
    },
    {
      name: 'film',
      plusMinus: limits.film,
      place: MOVE.film,
      sense: { clearance: -1, frontMost: 1, frontLeast: 1 },
    },
    { name: 'moisture', plusMinus: limits.moisture ?? 0, place: MOVE.moisture, sense: UNKNOWN },
  ];
}

function cutSources(cut: Cut, place: number, limits: SpreadLimits): Source[] {
  // A move straight into the depth has a known sense; any other slides the surface along, and its shape decides.
  const flat = cut.tilt === 0;
  const onEdge = cut.tilt === Math.PI / 2;
  return [
    {
      name: `${cut.name}.height`,
      plusMinus: limits.height,
      place,
      sense: flat ? DEEPER[cut.side] : UNKNOWN,
    },
    {
      name: `${cut.name}.fence`,
      plusMinus: limits.fence,
      place: place + 1,
      sense: onEdge ? DEEPER[cut.side] : UNKNOWN,
    },
  ];
}
