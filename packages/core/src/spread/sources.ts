import type { Cut } from '../machining/cut.ts';
import { toDegrees } from '../measure/angle.ts';
import type { JointFigures } from './joint.ts';
import type { SpreadLimits } from './limits.ts';
import { MOVE, movePlace } from './moves.ts';

/** A figure of a joint that has a spread. */
export type SpreadFigure = keyof JointFigures;

/** One size that is never exact. */
export interface Source {
  /**
   * `panel.thickness`, `panel.size`, `frame.groove.width`, `frame.groove.depth`, `frame.groove.setback`, `film`, `moisture`, or a
   * cut's name with `.height` (spindle), `.fence` or `.square`.
   */
  readonly name: string;
  /** mm, points of % for moisture, degrees for square. */
  readonly plusMinus: number;
  /** Its place in a list of moves. */
  readonly place: number;
  /** For each figure: +1 if it can only grow with this size, -1 only shrink, 0 if that depends on the shapes. */
  readonly sense: Readonly<Record<SpreadFigure, -1 | 0 | 1>>;
}

/** What an unknown sense is for every figure. */
export const UNKNOWN: Source['sense'] = { clearance: 0, frontMost: 0, frontLeast: 0, bottomGap: 0 };
/** A cut that goes deeper, and one that goes less deep. A figure that does not follow it may be said to do either. */
const DEEPER: Readonly<Record<Cut['side'], Source['sense']>> = {
  front: { clearance: 1, frontMost: 1, frontLeast: 1, bottomGap: 1 },
  back: { clearance: 1, frontMost: 1, frontLeast: -1, bottomGap: 1 },
};
const SHALLOWER: typeof DEEPER = {
  front: { clearance: -1, frontMost: -1, frontLeast: -1, bottomGap: 1 },
  back: { clearance: -1, frontMost: 1, frontLeast: 1, bottomGap: 1 },
};
/** A tongue that goes further in: it gets thicker, or stays as it is. */
const FURTHER: Source['sense'] = { clearance: -1, frontMost: -1, frontLeast: 1, bottomGap: -1 };

/**
 * Every source of spread in a joint, those of no size included.
 *
 * @throws RangeError for a ± that is negative or not a number, naming it.
 */
export function listSources(cuts: readonly Cut[], limits: SpreadLimits): Source[] {
  for (const [name, plusMinus] of Object.entries(limits)) {
    if (!(plusMinus >= 0)) throw new RangeError(`spread.${name} is a ± and must be 0 or more, got ${plusMinus}`);
  }
  if (!((limits.square ?? 0) < Math.PI / 4)) {
    throw new RangeError(`spread.square must be less than π/4 radians, got ${limits.square}`);
  }
  const { setback = 0, grooveDepth = 0, panelSize = 0, moisture = 0 } = limits;
  return [
    { name: 'panel.thickness', plusMinus: limits.thickness, place: MOVE.thickness, sense: UNKNOWN },
    ...cuts.flatMap((cut, index) => cutSources(cut, movePlace(index), limits)),
    {
      name: 'frame.groove.width',
      plusMinus: limits.grooveWidth,
      place: MOVE.grooveWidth,
      sense: { clearance: 1, frontMost: 1, frontLeast: -1, bottomGap: 1 },
    },
    {
      name: 'film',
      plusMinus: limits.film,
      place: MOVE.film,
      sense: { clearance: -1, frontMost: -1, frontLeast: 1, bottomGap: 1 },
    },
    { name: 'moisture', plusMinus: moisture, place: MOVE.moisture, sense: UNKNOWN },
    {
      name: 'frame.groove.setback',
      plusMinus: setback,
      place: MOVE.setback,
      sense: { clearance: 1, frontMost: -1, frontLeast: -1, bottomGap: 1 },
    },
    {
      name: 'frame.groove.depth',
      plusMinus: grooveDepth,
      place: MOVE.grooveDepth,
      sense: { ...FURTHER, bottomGap: 1 },
    },
    { name: 'panel.size', plusMinus: panelSize, place: MOVE.panelSize, sense: FURTHER },
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
    {
      name: `${cut.name}.square`,
      plusMinus: toDegrees(limits.square ?? 0),
      place: place + 2,
      sense: SHALLOWER[cut.side],
    },
  ];
}
