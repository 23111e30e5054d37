import { heightAt, SAME_LENGTH } from '@fielded/geometry';
import type { FitReport, Range, TongueReport, Verdict } from './fit-report.ts';
import { backLipOf, type FitLimits, type Frame } from './frame.ts';
import { findStop, goesIn, lastThatFits } from './goes-in.ts';
import { countInserted, type GrooveNeed, grooveNeed, type Tongue, thicknessAt, thicknessRange } from './tongue.ts';

/** The design insertion, how far the panel is meant to go into the groove, mm: groove depth less swell gap. */
export function designInsertion({ groove, swellGap }: Frame): number {
  return groove.depth - swellGap;
}

/** The measures of a tongue, and what they are taken from: the groove that its inserted part needs. */
export interface MeasuredTongue {
  readonly measures: TongueReport;
  readonly need: GrooveNeed;
}

/**
 * Measures the inserted part of a tongue, mm: at the tip (x = 0), at the groove's mouth (x = insertion, seen from the tip
 * side), the least and greatest thickness between, and the groove it needs.
 */
export function measureTongue(tongue: Tongue, insertion: number): MeasuredTongue {
  const tip = tongue[0]!;
  const mouth = tongue[countInserted(tongue, insertion) - 1]!;
  const need = grooveNeed(tongue, insertion);
  const { thinnest, thickest } = thicknessRange(tongue, insertion);
  const measures = {
    insertion,
    thicknessAtTip: thicknessAt(tip, tip.x0),
    thicknessAtMouth: thicknessAt(mouth, Math.min(mouth.x1, insertion)),
    thinnest,
    thickest,
    grooveNeeded: need.front - need.back,
  };
  return { measures, need };
}

/** What is left of a groove for a tongue that needs so much at its design insertion, both coated with a `film` on each face, mm. */
export function clearanceOf({ front, back }: GrooveNeed, { groove }: Frame, film = 0): number {
  return settled(groove.width - 2 * film - (front - back));
}

/**
 * Puts a tongue into its groove: clearance, how deep it goes, where the panel's faces end up, and the verdict.
 *
 * `designNeed` is the groove that the tongue needs at the design insertion (see `measureTongue`), `thickness` the panel's measured
 * thickness, `margin` how far in from the edge the raise leaves the face (null without a front cut), `film` the finish on each face
 * of the tongue; all in mm (formulas 7 to 10). Differences below 1e-9 mm count as 0, so that a tongue as thick as the groove is wide
 * is tight and not too thick. The groove's walls are bare, and the film keeps the wood off them; how proud a face stands is told from
 * wood to wood, as from finish to finish where frame and panel take the same.
 */
export function fitTongue(
  tongue: Tongue,
  designNeed: GrooveNeed,
  frame: Frame,
  limits: FitLimits,
  thickness: number,
  margin: number | null,
  film = 0,
): FitReport {
  // The finish on both faces of the tongue takes up part of the groove.
  const groove = { ...frame.groove, width: frame.groove.width - 2 * film };
  const insertion = designInsertion(frame);
  const clearance = clearanceOf(designNeed, frame, film);
  const known = { insertion, need: designNeed };
  const deepestInsertion = goesIn(tongue, groove.width, groove.depth, known);
  const verdict = judge(clearance, deepestInsertion, insertion, limits, entersAtAll(tongue, groove.width));
  if (verdict === 'will-not-enter') {
    const visibleMargin = margin === null ? null : margin - insertion;
    return { clearance, deepestInsertion, bottomGap: null, visibleMargin, frontFace: null, backFace: null, verdict };
  }
  const reached = Math.min(insertion, deepestInsertion);
  const need = reached < insertion ? needAtDepth(tongue, reached) : designNeed;
  const float = Math.max(0, settled(groove.width - (need.front - need.back)));
  return {
    clearance,
    deepestInsertion,
    bottomGap: groove.depth - reached,
    visibleMargin: margin === null ? null : margin - reached,
    frontFace: proudBy(thickness - need.front - groove.setback - film, float),
    backFace: proudBy(need.back - backLipOf(frame) - film, float),
    verdict,
  };
}

/**
 * The verdict alone, the same as that of `fitTongue`. Where the tongue stops in a stretch that ends before the design insertion, the
 * exact depth is not computed, since it cannot change the verdict.
 */
export function judgeTongue(
  tongue: Tongue,
  designNeed: GrooveNeed,
  frame: Frame,
  limits: FitLimits,
  film = 0,
): Verdict {
  const width = frame.groove.width - 2 * film;
  const insertion = designInsertion(frame);
  const stop = findStop(tongue, width, frame.groove.depth, { insertion, need: designNeed });
  const endsShort = stop !== null && stop.end < insertion - SAME_LENGTH;
  const deepest = stop === null ? frame.groove.depth : endsShort ? stop.end : lastThatFits(stop, width);
  return judge(clearanceOf(designNeed, frame, film), deepest, insertion, limits, entersAtAll(tongue, width));
}

/** The verdict on a fit, in the word that a maker uses at the bench. */
function judge(
  clearance: number,
  deepest: number,
  insertion: number,
  { snug, loose }: FitLimits,
  enters: boolean,
): Verdict {
  if (!enters) return 'will-not-enter';
  if (deepest < insertion - SAME_LENGTH) return 'stops-short';
  if (clearance < snug - SAME_LENGTH || clearance === 0) return 'tight';
  return clearance <= loose + SAME_LENGTH ? 'sliding' : 'loose';
}

/** Whether the tip of the tongue is no thicker than the groove is wide. */
function entersAtAll(tongue: Tongue, width: number): boolean {
  const tip = tongue[0]!;
  return thicknessAt(tip, tip.x0) <= width + SAME_LENGTH;
}

/** The groove needed at a depth, mm; at depth 0, the groove that the tip needs. */
function needAtDepth(tongue: Tongue, depth: number): GrooveNeed {
  if (depth > SAME_LENGTH) return grooveNeed(tongue, depth);
  const tip = tongue[0]!;
  return { front: heightAt(tip.front, tip.x0), back: heightAt(tip.back, tip.x0) };
}

/** How proud the panel's face stands over its float, mm: `most` where it lies against the wall on that side, less by the float against the other. */
function proudBy(most: number, float: number): Range {
  return { least: most - float, most };
}

/** A difference, but 0 where it is within 1e-9 mm of 0: that is rounding. */
function settled(difference: number): number {
  return Math.abs(difference) < SAME_LENGTH ? 0 : difference;
}
