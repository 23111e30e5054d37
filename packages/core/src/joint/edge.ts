import { type Chain, SAME_LENGTH } from '@fielded/geometry';
import type { Cut } from '../machining/cut.ts';
import { depthTaken } from '../machining/datum.ts';
import { type Sweep, sweepCut } from '../machining/sweep.ts';
import { findLostWood, type LostWood } from './lost-wood.ts';
import type { Panel } from './panel.ts';
import { type ClearedRegion, cutSection, type Section } from './section.ts';

/** One cut as made on the measured stock. Areas mm². */
export interface EdgeCut {
  readonly cut: Cut;
  /** Depth really taken below the worked face, mm. */
  readonly depthCut: number;
  readonly sweep: Sweep;
  /** What it would take from the full stock alone, and the part of that already gone when its turn comes. */
  readonly removedArea: number;
  readonly sharedArea: number;
  /** What its sweep takes that its drawing keeps. */
  readonly lost: LostWood | null;
}

/** What each cut leaves, in cut coordinates: computed once, for whoever moves the joint. */
export function sweptOf({ cuts }: Edge): Chain[] {
  return cuts.map(({ sweep }) => sweep.swept);
}

/** The section is drawn this far (mm) past the greatest reach, so that some untouched field shows. */
const FIELD_SHOWN = 20;

/** A panel's edge with every cut made. */
export interface Edge {
  readonly cuts: readonly EdgeCut[];
  readonly section: Section;
}

/**
 * Makes the cuts on a panel's edge, in running order, over 0 ≤ x ≤ greatest reach + 20 mm.
 *
 * The section is the stock less everything that any cut sweeps, so the running order matters only to what each finds gone.
 * Exact to rounding; never fails on a job that was read without faults.
 */
export function makeEdge(panel: Panel, cuts: readonly Cut[]): Edge {
  const { measured } = panel;
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
  const width = reach + FIELD_SHOWN;
  const section = cutSection(measured, width, regions);
  const shared = section.overlapping ? sharedAreas(section, regions) : null;
  const made: EdgeCut[] = [];
  for (let k = 0; k < cuts.length; k++) {
    const sweep = sweeps[k]!;
    made.push({
      cut: cuts[k]!,
      depthCut: depths[k]!,
      sweep,
      removedArea: section.takenAlone[k]!,
      sharedArea: shared === null ? 0 : shared[k]!,
      lost: findLostWood(sweep, measured, width),
    });
  }
  return { cuts: made, section };
}

/** What each region finds gone: what it would take alone, less what it adds to those before it. */
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
