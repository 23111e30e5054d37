import { SAME_LENGTH } from '../tolerance.ts';
import { arcAngle } from './along.ts';
import { distanceTo, type Heading, joinTangents } from './biarc.ts';
import { type Chain, type Curve, line } from './curve.ts';
import { findPeak } from './peak.ts';

/**
 * A curve to be fitted: where it is and which way it heads at u, 0 ≤ u ≤ 1. It must be smooth (a corner is two curves),
 * and its direction nowhere without length.
 */
export type SmoothCurve = (u: number) => Heading;

/** Lines and arcs in place of a curve, and the greatest distance (mm) from the curve to them, measured. */
export interface ArcFit {
  readonly chain: Chain;
  readonly deviation: number;
}

/** How far fitted arcs may lie from the curve they replace, mm, unless asked otherwise: what a good grinder holds. */
export const FIT_TOLERANCE = 0.005;

/** Points of a span that are tried while its length is sought; the peak between them is found by a parabola. */
const TRIAL_POINTS = 24;
/** Points of a span at which the finished fit is measured before its peak is closed in on. */
const MEASURED_POINTS = 64;
/** A span this much shorter than one that fails is long enough. */
const NEAR_ENOUGH = 0.005;
/** Spans shorter than this part of the curve are not cut further: a curve that asks for more is not smooth. */
const LEAST_SPAN = 1e-6;

/**
 * Fits a smooth curve with lines and tangent arcs that lie within `tolerance` (mm) of it.
 *
 * The joints between spans lie on the curve and carry its direction, so fits of curves that run on smoothly into each
 * other do too, and both ends are exact. From the start, each span is the longest that one pair of tangent arcs
 * (`joinTangents`) holds; since a part of a span that holds, holds as well, no chain of such pairs has fewer. A line
 * comes back as one line and a circle's arc as one arc. What the last span has to spare is then shared out among all. The deviation is measured on the finished chain: the
 * distance from the curve at 64 points of every span, closed in on at the greatest; good to about 1 % of itself.
 * A curve of no length gives an empty chain. Throws RangeError for a tolerance that is not above 0.
 *
 * @example fitArcs((u) => ({ x: 10 * u, y: 0, dx: 1, dy: 0 })).chain.length // 1
 */
export function fitArcs(curve: SmoothCurve, tolerance: number = FIT_TOLERANCE): ArcFit {
  if (!(tolerance > 0)) throw new RangeError(`the tolerance must be above 0 mm, got ${tolerance}`);
  let allowed = 0.999 * tolerance;
  for (;;) {
    const fit = fitSpans(curve, allowed);
    if (fit.deviation <= tolerance || allowed < tolerance / 8) return evenOut(curve, fit, allowed);
    allowed *= 0.9;
  }
}

/** A chain of spans in the making: `spare` is how much shorter the last one is than it might be, 0 to 1. */
interface SpanFit extends ArcFit {
  readonly spans: number;
  readonly spare: number;
}

/**
 * The same number of spans, all about as far from the curve, instead of full ones and a short rest: error grows with the
 * cube of length, so the n spans hold ((n − spare) / n)³ of what was allowed. Kept only if the count stands.
 */
function evenOut(curve: SmoothCurve, fit: SpanFit, allowed: number): ArcFit {
  const { chain, deviation, spans, spare } = fit;
  if (spans < 2 || spare < 0.05) return { chain, deviation };
  const even = fitSpans(curve, 1.02 * allowed * ((spans - spare) / spans) ** 3);
  const better = even.chain.length <= chain.length && even.deviation < deviation;
  return better ? { chain: even.chain, deviation: even.deviation } : { chain, deviation };
}

function fitSpans(curve: SmoothCurve, allowed: number): SpanFit {
  const chain: Curve[] = [];
  let deviation = 0;
  let u = 0;
  let guess = 1;
  let spans = 0;
  let spare = 0;
  while (u < 1) {
    const end = longestSpan(curve, u, Math.min(1, u + guess), allowed);
    const arcs = spanArcs(curve(u), curve(end));
    const away = measureSpan(curve, u, end, arcs);
    deviation = Math.max(deviation, away);
    spare = 1 - Math.cbrt(Math.min(1, away / allowed));
    for (const c of arcs) chain.push(c);
    spans++;
    guess = 1.1 * (end - u);
    u = end;
  }
  return { chain, deviation, spans, spare };
}

/** Where the longest span from u ends. The error grows with about the cube of the length, which tells where to look next. */
function longestSpan(curve: SmoothCurve, u: number, first: number, allowed: number): number {
  let holds = u;
  let fails = Number.POSITIVE_INFINITY;
  let end = first;
  for (;;) {
    const error = trySpan(curve, u, end);
    if (error <= allowed) holds = end;
    else fails = end;
    if (holds === 1 || fails - holds <= NEAR_ENOUGH * (fails - u)) return holds;
    if (fails - u < LEAST_SPAN) return Math.min(1, fails);
    const aimed = u + (end - u) * Math.min(4, Math.max(0.2, Math.cbrt(allowed / error) * 0.998));
    const inside = aimed > holds + 0.1 * NEAR_ENOUGH * (end - u) && aimed < fails;
    end = Math.min(1, inside ? aimed : fails === Number.POSITIVE_INFINITY ? 1 : (holds + fails) / 2);
  }
}

/** The pair of arcs for a span. Where none exists (the point of a cusp) the span is short enough for a line, or has no length. */
function spanArcs(from: Heading, to: Heading): Chain {
  const arcs = joinTangents(from, to);
  if (arcs.length > 0 || (from.x === to.x && from.y === to.y)) return arcs;
  return [line(from.x, from.y, to.x, to.y)];
}

/** Greatest distance from the curve to the pair of arcs over a span, mm; Infinity where no pair serves. */
function trySpan(curve: SmoothCurve, from: number, to: number): number {
  const arcs = joinTangents(curve(from), curve(to));
  if (arcs.length === 0) return staysAt(curve, from, to) ? 0 : Number.POSITIVE_INFINITY;
  if (arcs.some((c) => arcAngle(c) > Math.PI)) return Number.POSITIVE_INFINITY;
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

function staysAt(curve: SmoothCurve, from: number, to: number): boolean {
  const start = curve(from);
  for (let i = 1; i <= TRIAL_POINTS; i++) {
    const p = curve(from + ((to - from) * i) / TRIAL_POINTS);
    if (Math.hypot(p.x - start.x, p.y - start.y) > SAME_LENGTH) return false;
  }
  return true;
}

function distanceFrom(p: Heading, arcs: Chain): number {
  let least = Number.POSITIVE_INFINITY;
  for (const c of arcs) least = Math.min(least, distanceTo(c, p.x, p.y));
  return least;
}

/** Peak of the parabola through three values at equal steps, the middle one the greatest. */
function parabolaPeak(a: number, b: number, c: number): number {
  const bend = 2 * b - a - c;
  return bend > 0 ? b + (c - a) ** 2 / (8 * bend) : b;
}

function measureSpan(curve: SmoothCurve, from: number, to: number, arcs: Chain): number {
  if (arcs.length === 0) return 0;
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
  return Math.max(greatest, away(findPeak(away, Math.max(from, at - step), Math.min(to, at + step), 16)));
}
