import type { Chain } from '../curve/curve.ts';
import type { Heading } from '../curve/heading.ts';

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

/** Which ends of a track are corners: there the arcs need not keep its heading, which may save one. */
export interface Corners {
  readonly start: boolean;
  readonly end: boolean;
}

/** One pair of arcs in the making, over u from `from` to `to`. */
export interface Span {
  readonly from: number;
  readonly to: number;
  readonly arcs: Chain;
  readonly away: number;
}

/** Spans as one chain, as far from the track as the farthest of them. */
export function asFit(spans: readonly Span[]): ArcFit {
  return { chain: spans.flatMap((span) => span.arcs), deviation: Math.max(0, ...spans.map((span) => span.away)) };
}
