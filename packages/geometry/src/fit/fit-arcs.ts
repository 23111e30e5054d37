import type { Chain } from '../curve/curve.ts';
import { distanceToChain } from '../curve/distance.ts';
import type { Heading } from '../curve/heading.ts';
import { SAME_LENGTH } from '../curve/tolerance.ts';
import { fitTrack } from './arc-spans.ts';
import { findPeak } from './peak.ts';
import type { ArcFit, Corners, Track } from './track.ts';

export type { ArcFit, Corners } from './track.ts';

/**
 * A curve to be fitted: where it is and which way it heads at u, 0 ≤ u ≤ 1. It must be smooth (a corner is two curves),
 * and its direction nowhere without length.
 */
export type SmoothCurve = (u: number) => Heading;

/** How far fitted arcs may lie from the curve they replace, mm, unless asked otherwise: what a good grinder holds. */
export const FIT_TOLERANCE = 0.005;

/** Points of a span that are tried while its length is sought; the peak between them is found by a parabola. */
const TRIAL_POINTS = 24;
/** Points of a span at which the finished fit is measured before its peak is closed in on. */
const MEASURED_POINTS = 64;
/** Shorter spans, as a part of the curve, are not cut further: a curve that asks for more is not smooth. */
const LEAST_SPAN = 1e-6;

/**
 * Fits a smooth curve with lines and tangent arcs that lie within `tolerance` (mm) of it, as few as `fitTrack` finds.
 *
 * The joints between pairs of arcs lie on the curve and carry its direction (but for the one that saves an arc at the
 * end, which lies on it), so fits of curves that run on smoothly into each other do too, and both ends are exact. A line
 * comes back as one line and a circle's arc as one arc. The deviation is measured on the finished chain: the distance
 * from the curve at 64 points of every span, closed in on at the greatest; good to about 1 % of itself. A curve of no
 * length gives an empty chain. `corners` says which ends need not keep the curve's heading. Throws RangeError for a tolerance that is not above 0.
 *
 * @example fitArcs((u) => ({ x: 10 * u, y: 0, dx: 1, dy: 0 })).chain.length // 1
 */
export function fitArcs(curve: SmoothCurve, tolerance: number = FIT_TOLERANCE, corners?: Corners): ArcFit {
  if (!(tolerance > 0)) throw new RangeError(`the tolerance must be above 0 mm, got ${tolerance}`);
  return fitTrack(trackOf(curve), tolerance, corners);
}

function trackOf(curve: SmoothCurve): Track {
  return {
    at: curve,
    leastSpan: LEAST_SPAN,
    tryOut: (from, to, arcs) => (arcs.length === 0 ? tryNone(curve, from, to) : tryPoints(curve, from, to, arcs)),
    measure: (from, to, arcs) => (arcs.length === 0 ? 0 : measurePoints(curve, from, to, arcs)),
  };
}

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

/** No pair of arcs joins the ends: fine where the curve stays at one point, useless anywhere else. */
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

/** Peak of the parabola through three values at equal steps, the middle one the greatest. */
function parabolaPeak(a: number, b: number, c: number): number {
  const bend = 2 * b - a - c;
  return bend > 0 ? b + (c - a) ** 2 / (8 * bend) : b;
}

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
