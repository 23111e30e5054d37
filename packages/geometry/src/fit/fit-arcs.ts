import type { Chain } from '../curve/curve.ts';
import { distanceToChain } from '../curve/distance.ts';
import type { Heading } from '../curve/heading.ts';
import { SAME_LENGTH } from '../curve/tolerance.ts';
import { fitTrack } from './arc-spans.ts';
import { findPeak } from './peak.ts';
import type { ArcFit, Corners, Track } from './track.ts';

export type { ArcFit, Corners } from './track.ts';

/**
 * A curve to be fitted: its point and tangent at u, 0 ≤ u ≤ 1. It must be smooth (a corner makes two curves), and its tangent must
 * nowhere have length 0.
 */
export type SmoothCurve = (u: number) => Heading;

/** How far fitted arcs may lie from the curve, mm, unless the caller asks otherwise: what a good grinder holds. */
export const FIT_TOLERANCE = 0.005;

/** Points of a span that are tried while its length is sought; a parabola gives the peak between them. */
const TRIAL_POINTS = 24;
/** Points of a span at which the finished fit is measured, before the greatest distance is searched for between them. */
const MEASURED_POINTS = 64;
/** Spans shorter than this share of the curve are not shortened further: a curve that needs that is not smooth. */
const LEAST_SPAN = 1e-6;

/**
 * Fits a smooth curve with lines and tangent arcs that lie within `tolerance` (mm) of it, as few as `fitTrack` finds.
 *
 * The joints between pairs of arcs lie on the curve and have its tangent; the one joint that saves an arc at the end lies on the
 * curve. Both ends are exact and keep the curve's tangent, except the ends that `corners` names. A straight curve gives one line, a
 * circular one one arc, a curve without length an empty chain. The deviation is measured on the finished chain: the distance from
 * the curve at 64 points of every span, refined where it is greatest; accurate to about 1 % of itself.
 *
 * @throws RangeError for a tolerance that is not above 0.
 * @example fitArcs((u) => ({ x: 10 * u, y: 0, dx: 1, dy: 0 })).chain.length // 1
 */
export function fitArcs(curve: SmoothCurve, tolerance: number = FIT_TOLERANCE, corners?: Corners): ArcFit {
  if (!(tolerance > 0)) throw new RangeError(`the tolerance must be above 0 mm, got ${tolerance}`);
  return fitTrack(trackOf(curve), tolerance, corners);
}

/** A smooth curve as a track: tried at a few points of a span, measured at more. */
function trackOf(curve: SmoothCurve): Track {
  return {
    at: curve,
    leastSpan: LEAST_SPAN,
    tryOut: (from, to, arcs) => (arcs.length === 0 ? tryNone(curve, from, to) : tryPoints(curve, from, to, arcs)),
    measure: (from, to, arcs) => (arcs.length === 0 ? 0 : measurePoints(curve, from, to, arcs)),
  };
}

/** The greatest distance from a span to its arcs, mm, from a few points and a parabola between them. */
function tryPoints(curve: SmoothCurve, from: number, to: number, arcs: Chain): number {
  let before = 0;
  let here = 0;
  let greatest = 0;
  for (let i = 1; i <= TRIAL_POINTS; i++) {
    const after = i === TRIAL_POINTS ? 0 : distanceFrom(curve(from + ((to - from) * i) / TRIAL_POINTS), arcs);
    if (here >= before && here >= after) greatest = Math.max(greatest, parabolaPeak(before, here, after));
    before = here;
    here = after;
  }
  return greatest;
}

/** What a span without arcs is worth: 0 where the curve stays at one point, else Infinity. */
function tryNone(curve: SmoothCurve, from: number, to: number): number {
  const start = curve(from);
  for (let i = 1; i <= TRIAL_POINTS; i++) {
    const p = curve(from + ((to - from) * i) / TRIAL_POINTS);
    if (Math.hypot(p.x - start.x, p.y - start.y) > SAME_LENGTH) return Number.POSITIVE_INFINITY;
  }
  return 0;
}

function distanceFrom(p: Heading, arcs: Chain): number {
  return distanceToChain(arcs, p.x, p.y);
}

/** The peak of the parabola through three values at equal steps, of which the middle one is the greatest. */
function parabolaPeak(a: number, b: number, c: number): number {
  const bend = 2 * b - a - c;
  return bend > 0 ? b + (c - a) ** 2 / (8 * bend) : b;
}

/** The greatest distance from a span to its arcs, mm: at many points, then by golden section about the greatest of them. */
function measurePoints(curve: SmoothCurve, from: number, to: number, arcs: Chain): number {
  const away = (u: number): number => distanceFrom(curve(u), arcs);
  const step = (to - from) / MEASURED_POINTS;
  let at = from;
  let greatest = 0;
  for (let i = 1; i < MEASURED_POINTS; i++) {
    const distance = away(from + i * step);
    if (distance > greatest) {
      greatest = distance;
      at = from + i * step;
    }
  }
  const peak = findPeak(away, Math.max(from, at - step), Math.min(to, at + step), 16);
  return Math.max(greatest, away(peak));
}
