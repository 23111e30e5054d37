import { arcAngle } from './along.ts';
import { type Heading, headingAtEnd, joinTangents, leaveHeading } from './biarc.ts';
import { type Chain, line } from './curve.ts';
import { findPeak } from './peak.ts';

/** Lines and arcs in place of a curve, and the greatest distance (mm) from the curve to them, measured. */
export interface ArcFit {
  readonly chain: Chain;
  readonly deviation: number;
}

/** What arcs are fitted to: something that can be followed from u = 0 to 1, and measured against arcs between two places. */
export interface Track {
  /** Where it is and which way it heads. */
  readonly at: (u: number) => Heading;
  /** Greatest distance from the track to the arcs between two places, mm: quick, while the places are sought. */
  readonly tryOut: (from: number, to: number, arcs: Chain) => number;
  /** The same, as well as it can be told. */
  readonly measure: (from: number, to: number, arcs: Chain) => number;
  /** Spans shorter than this are not cut further. */
  readonly leastSpan: number;
}

/** A span this much shorter than one that fails is long enough. */
const NEAR_ENOUGH = 0.005;

/** One pair of arcs in the making, over u from `from` to `to`. */
interface Span {
  readonly from: number;
  readonly to: number;
  readonly arcs: Chain;
  readonly away: number;
}

/**
 * Fits a track with pairs of tangent arcs that lie within `tolerance` mm of it.
 *
 * From the start, each span is the longest that one pair holds; since a part of a span that holds, holds as well, no
 * chain of pairs with their joints on the track has fewer. Then three arcs are tried in place of the last four; where
 * they do not hold, what the last span has to spare is shared out among all.
 */
export function fitTrack(track: Track, tolerance: number): ArcFit {
  let allowed = 0.999 * tolerance;
  for (;;) {
    const spans = fitSpans(track, allowed);
    const fit = asFit(spans);
    if (fit.deviation <= tolerance || allowed < tolerance / 8) {
      return withThreeAtTheEnd(track, spans, tolerance) ?? evenOut(track, spans, fit, allowed);
    }
    allowed *= 0.9;
  }
}

function asFit(spans: readonly Span[]): ArcFit {
  return { chain: spans.flatMap((span) => span.arcs), deviation: Math.max(0, ...spans.map((span) => span.away)) };
}

function fitSpans(track: Track, allowed: number): Span[] {
  const spans: Span[] = [];
  let from = 0;
  let guess = 1;
  while (from < 1) {
    const to = longestSpan(track, from, Math.min(1, from + guess), allowed);
    const arcs = spanArcs(track.at(from), track.at(to));
    spans.push({ from, to, arcs, away: track.measure(from, to, arcs) });
    guess = 1.1 * (to - from);
    from = to;
  }
  return spans;
}

/** Where the longest span from u ends. The error grows with about the cube of the length, which tells where to look next. */
function longestSpan(track: Track, u: number, first: number, allowed: number): number {
  let holds = u;
  let fails = Number.POSITIVE_INFINITY;
  let end = first;
  for (;;) {
    const error = trySpan(track, u, end);
    if (error <= allowed) holds = end;
    else fails = end;
    if (holds === 1 || fails - holds <= NEAR_ENOUGH * (fails - u)) return holds;
    if (fails - u < track.leastSpan) return Math.min(1, Math.max(holds, fails));
    const aimed = u + (end - u) * Math.min(4, Math.max(0.2, Math.cbrt(allowed / error) * 0.998));
    const inside = aimed > holds + 0.1 * NEAR_ENOUGH * (end - u) && aimed < fails;
    end = Math.min(1, inside ? aimed : fails === Number.POSITIVE_INFINITY ? 1 : (holds + fails) / 2);
  }
}

/** Greatest distance from the track to the pair of arcs over a span, mm; Infinity where no pair serves. */
function trySpan(track: Track, from: number, to: number): number {
  const arcs = joinTangents(track.at(from), track.at(to));
  return arcs.some((c) => arcAngle(c) > Math.PI) ? Number.POSITIVE_INFINITY : track.tryOut(from, to, arcs);
}

/** The pair of arcs for a span. Where none exists (the point of a cusp) the span is short enough for a line, or has no length. */
function spanArcs(from: Heading, to: Heading): Chain {
  const arcs = joinTangents(from, to);
  if (arcs.length > 0 || (from.x === to.x && from.y === to.y)) return arcs;
  return [line(from.x, from.y, to.x, to.y)];
}

/**
 * Three arcs for the last four, where they hold: one arc that leaves the track's heading and ends on the track, and a pair
 * from where it then heads. Undefined where no place for the joint serves.
 */
function withThreeAtTheEnd(track: Track, spans: readonly Span[], tolerance: number): ArcFit | undefined {
  const [last, before] = [spans.at(-1)!, spans.at(-2)];
  if (!before || last.arcs.length + before.arcs.length < 4) return undefined;
  const { from } = before;
  const arcsWithJoint = (joint: number): Chain[] => {
    const first = leaveHeading(track.at(from), track.at(joint));
    return [[first], joinTangents(headingAtEnd(first), track.at(1))];
  };
  const error = (joint: number): number => {
    const [first, rest] = arcsWithJoint(joint) as [Chain, Chain];
    if ([...first, ...rest].some((c) => arcAngle(c) > Math.PI)) return Number.POSITIVE_INFINITY;
    return Math.max(track.tryOut(from, joint, first), track.tryOut(joint, 1, rest));
  };
  const part = (share: number) => from + share * (1 - from);
  const joint = findPeak((u) => -error(u), part(0.2), part(0.6), 14);
  const [first, rest] = arcsWithJoint(joint) as [Chain, Chain];
  if (!(error(joint) <= tolerance)) return undefined;
  const away = Math.max(track.measure(from, joint, first), track.measure(joint, 1, rest));
  const fit = asFit([...spans.slice(0, -2), { from, to: 1, arcs: [...first, ...rest], away }]);
  return fit.deviation <= tolerance ? fit : undefined;
}

/**
 * The same number of spans, all about as far from the track, instead of full ones and a short rest: error grows with the
 * cube of length, so n spans, the last one with `spare` of its length to spare, hold ((n − spare) / n)³ of what was
 * allowed. Kept only if the count stands.
 */
function evenOut(track: Track, spans: readonly Span[], fit: ArcFit, allowed: number): ArcFit {
  const n = spans.length;
  const spare = n === 0 ? 0 : 1 - Math.cbrt(Math.min(1, spans[n - 1]!.away / allowed));
  if (n < 2 || spare < 0.05) return fit;
  const even = asFit(fitSpans(track, 1.02 * allowed * ((n - spare) / n) ** 3));
  return even.chain.length <= fit.chain.length && even.deviation < fit.deviation ? even : fit;
}
