import { arcAngle } from '../curve/along.ts';
import type { Chain } from '../curve/curve.ts';
import { headingAtEnd } from '../curve/heading.ts';
import { joinTangents, leaveHeading } from './biarc.ts';
import { findPeak } from './peak.ts';
import { type ArcFit, asFit, type Span, type Track } from './track.ts';

/** A way to end a chain: the arcs up to a joint on the track, and those after it. */
type Ending = (joint: number) => readonly [Chain, Chain];

/** Three arcs in place of the last four: one that is tangent to the track and ends on it, and a pair from there to the end. Undefined where they do not stay within `tolerance`. */
export function withThreeAtTheEnd(track: Track, spans: readonly Span[], tolerance: number): ArcFit | undefined {
  const { from } = spans.at(-2) ?? { from: 0 };
  if (spans.length < 2 || arcsOf(spans.slice(-2)) < 4) return undefined;
  return endWith(track, spans.slice(0, -2), tolerance, [0.2, 0.6], (joint) => {
    const first = leaveHeading(track.at(from), track.at(joint));
    return [[first], joinTangents(headingAtEnd(first), track.at(1))];
  });
}

/** At a corner: two tangent arcs in place of the last two pairs, or one in place of the last pair. Undefined where they do not stay within `tolerance`. */
export function withFewAtCorner(track: Track, spans: readonly Span[], tolerance: number): ArcFit | undefined {
  const arrive =
    (from: number): Ending =>
    (joint) => {
      const first = leaveHeading(track.at(from), track.at(joint));
      return [[first], [leaveHeading(headingAtEnd(first), track.at(1))]];
    };
  const last = spans.at(-1)!;
  const before = spans.at(-2);
  if (before && arcsOf([before, last]) > 2) {
    const two = endWith(track, spans.slice(0, -2), tolerance, [0.3, 0.7], arrive(before.from));
    if (two) return two;
  }
  if (last.arcs.length > 1) {
    const one = [leaveHeading(track.at(last.from), track.at(1))];
    const fit = withLast(track, spans.slice(0, -1), last.from, [one, []], 1, tolerance);
    if (fit) return fit;
  }
  return before && arcsOf([before, last]) > 3 ? withThreeAtTheEnd(track, spans, tolerance) : undefined;
}

function arcsOf(spans: readonly Span[]): number {
  return spans.reduce((sum, span) => sum + span.arcs.length, 0);
}

/** The spans kept and an ending after them. Its joint is where the ending comes nearest to the track, sought between two `shares` of the rest. */
function endWith(
  track: Track,
  kept: readonly Span[],
  tolerance: number,
  shares: readonly [number, number],
  ending: Ending,
): ArcFit | undefined {
  const from = kept.at(-1)?.to ?? 0;
  const error = (joint: number): number => {
    const [first, rest] = ending(joint);
    if ([...first, ...rest].some((c) => arcAngle(c) > Math.PI)) return Number.POSITIVE_INFINITY;
    return Math.max(track.tryOut(from, joint, first), track.tryOut(joint, 1, rest));
  };
  const part = (share: number) => from + share * (1 - from);
  const joint = findPeak((u) => -error(u), part(shares[0]), part(shares[1]), 14);
  return error(joint) <= tolerance ? withLast(track, kept, from, ending(joint), joint, tolerance) : undefined;
}

/** The spans kept and the arcs of an ending after them, if these stay within `tolerance` when measured. */
function withLast(
  track: Track,
  kept: readonly Span[],
  from: number,
  [first, rest]: readonly [Chain, Chain],
  joint: number,
  tolerance: number,
): ArcFit | undefined {
  const afterwards = rest.length === 0 ? 0 : track.measure(joint, 1, rest);
  const away = Math.max(track.measure(from, joint, first), afterwards);
  const fit = asFit([...kept, { from, to: 1, arcs: [...first, ...rest], away }]);
  return fit.deviation <= tolerance ? fit : undefined;
}

/** One arc between two corners: through both ends, its rise that of the track's middle or up to `tolerance` more or less. Undefined where it does not stay within `tolerance`. */
export function fitOneArc(track: Track, tolerance: number): ArcFit | undefined {
  const [from, middle, to] = [track.at(0), track.at(0.5), track.at(1)];
  const [vx, vy] = [to.x - from.x, to.y - from.y];
  const chord = Math.hypot(vx, vy);
  if (chord === 0) return undefined;
  const rise = (vx * (middle.y - from.y) - vy * (middle.x - from.x)) / chord;
  // An arc leaves its chord at twice the angle of the line from its end to its highest point, on the side that it rises to.
  const bent = (height: number): Chain => {
    const angle = -2 * Math.atan2(2 * height, chord);
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    return [leaveHeading({ x: from.x, y: from.y, dx: vx * cos + vy * sin, dy: vy * cos - vx * sin }, to)];
  };
  if (Math.abs(rise) > chord / 2) return undefined;
  const error = (height: number) => track.tryOut(0, 1, bent(height));
  const best = findPeak((height) => -error(height), rise - tolerance, rise + tolerance, 12);
  if (!(error(best) <= tolerance)) return undefined;
  const deviation = track.measure(0, 1, bent(best));
  return deviation <= tolerance ? { chain: bent(best), deviation } : undefined;
}
