import { SAME_LENGTH } from '@fielded/geometry';
import type { Job } from '../job/job.ts';
import { cutSection } from '../joint/section.ts';
import type { ClearedRegion } from '../joint/strip-reader.ts';
import { readTongue, type Tongue, thicknessAt } from '../joint/tongue.ts';
import { depthTaken } from '../machining/datum.ts';
import { faceEnd } from '../machining/face-end.ts';
import { sweepCut } from '../machining/sweep.ts';
import type { Units } from '../measure/length.ts';
import type { Correction } from './plan.ts';
import type { Run } from './set-up-report.ts';
import type { Work } from './work.ts';

/** Readings of the calliper that the table is made for: tenths of a millimetre, or 4, 8 and 12 thousandths of an inch; mm. */
const READINGS = {
  mm: [-0.3, -0.2, -0.1, 0.1, 0.2, 0.3],
  in: [-12, -8, -4, 4, 8, 12].map((mil) => (mil * 25.4) / 1000),
};

/** Half the step over which the tongue's slopes are taken, mm. */
const STEP = 0.05;

/** A tongue that changes less than this for a mm of setting does not follow it. */
const NO_SLOPE = 0.02;

/**
 * What to move where the calliper reads too much or too little on the tongue, `at` mm in from the edge (formula U12): the
 * spindle up and the knives out of the fence, either alone. The slopes are the section's own, taken over ± 0.05 mm.
 */
export function correctSetting(
  works: readonly Work[],
  index: number,
  run: Run,
  at: number,
  units: Units,
): Correction[] {
  const { cut } = works[index]!;
  const byDepth = slopeOf(works, index, 'depth', at);
  const byReach = slopeOf(works, index, 'reach', at);
  const onEdge = cut.tilt === Math.PI / 2;
  const [sin, cos] = [Math.sin(cut.tilt), onEdge ? 0 : Math.cos(cut.tilt)];
  // Spindle up: deeper under the stock, shallower over it; tilted, further in or out as well. On edge it sets the reach.
  const up = run === 'under' && !onEdge ? cos * byDepth - sin * byReach : sin * byReach - cos * byDepth;
  const out = onEdge ? byDepth : byReach;
  return READINGS[units].map((reads) => ({ reads, spindle: moveFor(reads, up), fence: moveFor(reads, out) }));
}

/**
 * The same with both heads on one spindle (formula U11): its height moves both cuts, one deeper and one less deep, so that only the
 * spacer, and the fence where the tongue tapers, change it.
 */
export function correctTogether(works: readonly Work[], at: number, units: Units): Correction[] {
  const out = works.reduce((sum, _, index) => sum + slopeOf(works, index, 'reach', at), 0);
  return READINGS[units].map((reads) => ({ reads, spindle: null, fence: moveFor(reads, out) }));
}

function moveFor(reads: number, slope: number): number | null {
  return Math.abs(slope) < NO_SLOPE ? null : -reads / slope;
}

/** Change of the tongue's thickness for each mm that a cut's depth or reach grows. */
function slopeOf(works: readonly Work[], index: number, setting: 'depth' | 'reach', at: number): number {
  const more = tongueAt(works, index, setting, STEP, at);
  const less = tongueAt(works, index, setting, -STEP, at);
  return more === null || less === null ? 0 : (more - less) / (2 * STEP);
}

/**
 * Where a test piece is measured after a cut, mm in from its edge: at the groove's `mouth`, or in the middle of a cut that ends before it
 * and leaves the mouth as it was.
 */
export function placeToMeasure({ sweep }: Work, mouth: number): number {
  const end = faceEnd(sweep.swept) ?? 0;
  return end > mouth + SAME_LENGTH ? mouth : end / 2;
}

/** A cut, and the side of the stock that it is run on. */
export interface RunWork {
  readonly work: Work;
  readonly run: Run;
}

/**
 * Thickness of what some cuts, run as planned, leave `at` mm in from the edge of the stock as measured, mm; null where nothing is left
 * there. Stock of another thickness than the spindle is set for is cut more or less deep where it is run over (formula 3).
 */
export function thicknessLeft(made: readonly RunWork[], at: number, panel: Job['panel']): number | null {
  if (made.length === 0) return null;
  const regions = made.map(({ work: { cut }, run }) => {
    const depth = depthTaken({ run, depth: cut.depth }, panel);
    return { side: cut.side, edge: sweepCut(cut, depth).swept };
  });
  return leftAt(
    made.map(({ work }) => work),
    regions,
    panel.measured,
    at,
  );
}

/** Thickness of the tongue `at` mm in with one setting moved, mm; null where no tongue is left there. */
function tongueAt(
  works: readonly Work[],
  index: number,
  setting: 'depth' | 'reach',
  by: number,
  at: number,
): number | null {
  const regions = works.map(({ cut, sweep }, k) => {
    const moved = { ...cut, [setting]: cut[setting] + by };
    return { side: cut.side, edge: (k === index ? sweepCut(moved, moved.depth) : sweep).swept };
  });
  return leftAt(works, regions, works[index]!.thickness, at);
}

/** Thickness of what the regions that cuts clear leave of stock `at` mm in from its edge, mm; null where nothing is left there. */
function leftAt(
  works: readonly Work[],
  regions: readonly ClearedRegion[],
  thickness: number,
  at: number,
): number | null {
  const width = Math.max(...works.map(({ cut }) => cut.reach)) + 1;
  const tongue: Tongue = readTongue(cutSection(thickness, width, regions), at + 1);
  // Between two stretches that meet there lies no more than rounding.
  const there = tongue.find(({ x0, x1 }) => x0 <= at + SAME_LENGTH && x1 >= at - SAME_LENGTH);
  return there === undefined ? null : thicknessAt(there, Math.min(Math.max(at, there.x0), there.x1));
}
