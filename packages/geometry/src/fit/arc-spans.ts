import { arcAngle } from '../curve/along.ts';
import { type Chain, line, reverseCurve } from '../curve/curve.ts';
import type { Heading } from '../curve/heading.ts';
import { joinTangents } from './biarc.ts';
import { fitOneArc, withFewAtCorner, withThreeAtTheEnd } from './fewer-arcs.ts';
import { type ArcFit, asFit, type Corners, type Span, type Track } from './track.ts';

/** The search for a span's end stops when the longest span that holds and the shortest that fails differ by this share. */
const NEAR_ENOUGH = 0.005;

/**
 * Fits a track with pairs of tangent arcs that lie within `tolerance` mm of it (formula K8).
 *
 * Greedy from the start: each span is the longest over which one pair stays within the tolerance. A part of such a span is within it
 * too, so no chain of pairs whose joints lie on the track has fewer. Then fewer arcs are tried at the end: one or two in place of four
 * at a corner, elsewhere three. Where none of these is close enough, the slack of the last span is shared out among all.
 */
export function fitTrack(track: Track, tolerance: number, corners: Corners = { start: false, end: false }): ArcFit {
  // A line, or an arc that keeps the headings at both ends, is one piece as it is.
  const alone = joinTangents(track.at(0), track.at(1)).length === 1;
  if (corners.start && corners.end && !alone) {
    const one = fitOneArc(track, tolerance);
    if (one) return one;
  }
  if (corners.start && !corners.end) return reverseFit(fitFromStart(reverseTrack(track), tolerance, true));
  return fitFromStart(track, tolerance, corners.end);
}

/** Fits a track from its start; the tolerance of the trial is lowered until the measured deviation is within `tolerance`. */
function fitFromStart(track: Track, tolerance: number, cornerAtEnd: boolean): ArcFit {
  let allowed = 0.999 * tolerance;
  for (;;) {
    const spans = fitSpans(track, allowed);
    const fit = asFit(spans);
    if (fit.deviation <= tolerance || allowed < tolerance / 8) {
      const fewer = cornerAtEnd ? withFewAtCorner(track, spans, tolerance) : withThreeAtTheEnd(track, spans, tolerance);
      return fewer ?? evenOut(track, spans, fit, allowed);
    }
    allowed *= 0.9;
  }
}

/** The spans of a track, each as long as it can be. The length of one is the first guess for the next. */
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

/** Where the longest span from u ends. The error grows with about the cube of the length, which says where to look next. */
function longestSpan(track: Track, u: number, first: number, allowed: number): number {
  let holds = u;
  let fails = Number.POSITIVE_INFINITY;
  let end = first;
  for (;;) {
    const error = trySpan(track, u, end);
    if (error <= allowed) holds = end;
    else fails = end;
    if (holds === 1 || fails - holds <= NEAR_ENOUGH * (fails - u)) return holds;
    if (fails - u < track.leastSpan) return fails;
    // By the cube rule, where is the error as large as allowed? Bisect if that lies outside what is known.
    const aimed = u + (end - u) * Math.min(4, Math.max(0.2, Math.cbrt(allowed / error) * 0.998));
    const inside = aimed > holds + 0.1 * NEAR_ENOUGH * (end - u) && aimed < fails;
    end = Math.min(1, inside ? aimed : fails === Number.POSITIVE_INFINITY ? 1 : (holds + fails) / 2);
  }
}

/** Greatest distance from the track to the pair of arcs over a span, mm; Infinity where there is no such pair. */
function trySpan(track: Track, from: number, to: number): number {
  const arcs = joinTangents(track.at(from), track.at(to));
  return arcs.some((c) => arcAngle(c) > Math.PI) ? Number.POSITIVE_INFINITY : track.tryOut(from, to, arcs);
}

/** The pair of arcs for a span. Where there is none (at a cusp), the span is so short that a line will do, or it has no length. */
function spanArcs(from: Heading, to: Heading): Chain {
  const arcs = joinTangents(from, to);
  if (arcs.length > 0 || (from.x === to.x && from.y === to.y)) return arcs;
  return [line(from.x, from.y, to.x, to.y)];
}

/** The same track followed from its end to its start. */
function reverseTrack(track: Track): Track {
  return {
    at: (u) => {
      const { x, y, dx, dy } = track.at(1 - u);
      return { x, y, dx: -dx, dy: -dy };
    },
    tryOut: (from, to, arcs) => track.tryOut(1 - to, 1 - from, arcs),
    measure: (from, to, arcs) => track.measure(1 - to, 1 - from, arcs),
    leastSpan: track.leastSpan,
  };
}

function reverseFit({ chain, deviation }: ArcFit): ArcFit {
  return { chain: chain.map(reverseCurve).reverse(), deviation };
}

/**
 * The same number of spans with about the same error in each, instead of full spans and a short last one. The error grows with the
 * cube of the length: where the last of n spans could be longer by `spare` of a span, all of them need only ((n − spare)/n)³ of what
 * was allowed. Kept only if the number of arcs does not grow and the deviation falls.
 */
function evenOut(track: Track, spans: readonly Span[], fit: ArcFit, allowed: number): ArcFit {
  const n = spans.length;
  const spare = n === 0 ? 0 : 1 - Math.cbrt(Math.min(1, spans[n - 1]!.away / allowed));
  if (n < 2 || spare < 0.05) return fit;
  const even = asFit(fitSpans(track, 1.02 * allowed * ((n - spare) / n) ** 3));
  return even.chain.length <= fit.chain.length && even.deviation < fit.deviation ? even : fit;
}
