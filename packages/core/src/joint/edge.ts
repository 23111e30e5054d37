import { type Chain, SAME_LENGTH } from '@fielded/geometry';
import type { Cut } from '../machining/cut.ts';
import { depthTaken } from '../machining/datum.ts';
import { faceEnd } from '../machining/face-end.ts';
import { type Sweep, sweepCut } from '../machining/sweep.ts';
import { findLostWood, type LostWood } from './lost-wood.ts';
import type { Panel } from './panel.ts';
import { cutSection, type Section } from './section.ts';
import type { ClearedRegion } from './strip-reader.ts';

/** One cut as made on the measured stock. Areas mm². */
export interface EdgeCut {
  readonly cut: Cut;
  /** Depth really taken below the worked face, mm. */
  readonly depthCut: number;
  readonly sweep: Sweep;
  /** How far in from the edge it leaves the face, mm (formula 12): less than its reach where it is set less deep than drawn; null where it takes none. */
  readonly faceEnd: number | null;
  /** What it would take from the full stock alone, and how much of that earlier cuts have taken. */
  readonly removedArea: number;
  readonly sharedArea: number;
  /** The wood that its sweep takes although its drawing keeps it. */
  readonly lost: LostWood | null;
}

/** The swept edge of each cut, in cut coordinates. The spread and the seasons move these instead of sweeping anew. */
export function sweptOf({ cuts }: Edge): Chain[] {
  return cuts.map(({ sweep }) => sweep.swept);
}

/** How far in from the panel's edge the front cuts leave the face, mm: the field begins there. Null where none takes wood. */
export function fieldStart({ cuts }: Edge): number | null {
  let start: number | null = null;
  for (const { cut, faceEnd } of cuts)
    if (cut.side === 'front' && faceEnd !== null) start = Math.max(start ?? faceEnd, faceEnd);
  return start;
}

/** The section is computed to this far (mm) beyond the greatest reach, so that a drawing shows some of the field. */
const FIELD_SHOWN = 20;

/** A panel's edge with every cut made. */
export interface Edge {
  readonly cuts: readonly EdgeCut[];
  readonly section: Section;
}

/**
 * Makes the cuts on a panel's edge, in running order, over 0 ≤ x ≤ greatest reach + 20 mm.
 *
 * The section is the stock less everything that any cut sweeps, so the running order only decides which cut takes what two share.
 * Exact to rounding; does not fail on a job that was read without faults.
 */
export function makeEdge(panel: Panel, cuts: readonly Cut[]): Edge {
  const { depths, sweeps, regions, section } = cutThrough(panel, cuts);
  const { thickness, width } = section;
  const shared = section.overlapping ? sharedAreas(section, regions) : null;
  const made: EdgeCut[] = [];
  for (let k = 0; k < cuts.length; k++) {
    const sweep = sweeps[k]!;
    made.push({
      cut: cuts[k]!,
      depthCut: depths[k]!,
      sweep,
      faceEnd: faceEnd(sweep.swept),
      removedArea: section.takenAlone[k]!,
      sharedArea: shared === null ? 0 : shared[k]!,
      lost: findLostWood(sweep, thickness, width),
    });
  }
  return { cuts: made, section };
}

/** The section that `makeEdge` cuts, alone: for a search that asks nothing of the single cuts, which takes twice as long where they overlap. */
export function cutEdge(panel: Panel, cuts: readonly Cut[]): Section {
  return cutThrough(panel, cuts).section;
}

function cutThrough(panel: Panel, cuts: readonly Cut[]) {
  const depths: number[] = [];
  const sweeps: Sweep[] = [];
  const regions: ClearedRegion[] = [];
  let reach = Number.NEGATIVE_INFINITY;
  for (const cut of cuts) {
    const depth = depthTaken(cut, panel);
    const sweep = sweepCut(cut, depth);
    depths.push(depth);
    sweeps.push(sweep);
    regions.push({ side: cut.side, edge: sweep.swept });
    if (cut.reach > reach) reach = cut.reach;
  }
  const section = cutSection(panel.measured, reach + FIELD_SHOWN, regions);
  return { depths, sweeps, regions, section };
}

/** How much of what each region would take alone the regions before it have taken, mm². */
function sharedAreas(section: Section, regions: readonly ClearedRegion[]): number[] {
  const { thickness, width, takenAlone } = section;
  const last = regions.length - 1;
  let gone = 0;
  return regions.map((_, k) => {
    // With the last cut it is the section that was cut already.
    const some = k === last ? section : cutSection(thickness, width, regions.slice(0, k + 1));
    const withThis = some.removed.area;
    const shared = takenAlone[k]! - (withThis - gone);
    gone = withThis;
    return shared > SAME_LENGTH ? shared : 0;
  });
}
