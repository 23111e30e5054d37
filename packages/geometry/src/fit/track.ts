import type { Chain } from '../curve/curve.ts';
import type { Heading } from '../curve/heading.ts';

/** The lines and arcs fitted to a curve, and the greatest distance (mm) from the curve to them, measured. */
export interface ArcFit {
  readonly chain: Chain;
  readonly deviation: number;
}

/** What arcs are fitted to: it has a point and a heading at every u from 0 to 1, and can be measured against arcs between two u. */
export interface Track {
  /** The point and heading at u. */
  readonly at: (u: number) => Heading;
  /** The greatest distance from the track to the arcs between two u, mm: a quick estimate, while the ends of spans are sought. */
  readonly tryOut: (from: number, to: number, arcs: Chain) => number;
  /** The same as accurately as it can be measured. */
  readonly measure: (from: number, to: number, arcs: Chain) => number;
  /** Spans shorter than this, in u, are not shortened further. */
  readonly leastSpan: number;
}

/** Which ends of a track are corners: the arcs need not keep the heading there, which may save one. */
export interface Corners {
  readonly start: boolean;
  readonly end: boolean;
}

/** A span of a track, from u = `from` to u = `to`, with its arcs and the distance to them, mm. */
export interface Span {
  readonly from: number;
  readonly to: number;
  readonly arcs: Chain;
  readonly away: number;
}

/** The arcs of spans as one chain; its deviation is the greatest of theirs. */
export function asFit(spans: readonly Span[]): ArcFit {
  return { chain: spans.flatMap((span) => span.arcs), deviation: Math.max(0, ...spans.map((span) => span.away)) };
}
