/**
 * A profile as the turning head sees it, mm: x is the station along the axis from the tip, y the reach less the tip's reach (0 at the
 * tip, negative elsewhere). A point cuts at the cutting radius plus y.
 */
export interface SeenProfile {
  readonly chain: Chain;
  /** Where the tip is along the axis: its depth b with the panel flat, its distance in a with the panel on edge. */
  readonly tipStation: number;
  /** The tip's reach from the panel's arris, along the radius. */
  readonly tipReach: number;
  readonly tilt: number;
}

/**
 * Turns a profile from cut coordinates to those of the head.
 *
 * `tilt` 0 (flat): stations along the depth b, reach along a. π/2 (on edge): stations along a, reach along b. Between
 * them the reach is a·cos + b·sin and the station b·cos − a·sin, growing with depth. The tip is the point of greatest
 * reach; where that is held over a length, the end at the greatest station. Exact.
 */
export function seeProfile(chain: Chain, tilt: number): SeenProfile {
  const seen = chain.map((c) => toHead(c, tilt));
  const monotone = splitAtExtremes(seen);
  const tipReach = Math.max(...monotone.map((c) => Math.max(c.y0, c.y1)));
  let tipStation = Number.NEGATIVE_INFINITY;
  for (const c of monotone) {
    if (tipReach - c.y0 <= SAME_LENGTH) tipStation = Math.max(tipStation, c.x0);
    if (tipReach - c.y1 <= SAME_LENGTH) tipStation = Math.max(tipStation, c.x1);
  }
  // A tip may be given at -0; adding 0 makes it 0.
  return { chain: seen.map((c) => shiftCurve(c, -tipStation, -tipReach)), tipStation: tipStation + 0, tipReach, tilt };
}

/** Another chain of the same cut as the head sees it, from a tip that is already known. */
export function seeFrom(chain: Chain, { tilt, tipStation, tipReach }: Omit<SeenProfile, 'chain'>): SeenProfile {
  const placed = chain.map((c) => shiftCurve(toHead(c, tilt), -tipStation, -tipReach));
  return { chain: placed, tipStation, tipReach, tilt };
}

/** The same profile with its tip at another of its points, which lies (x, y) from the present tip. */
export function moveTip(seen: SeenProfile, x: number, y: number): SeenProfile {
  return {
    chain: seen.chain.map((c) => shiftCurve(c, -x, -y)),
    tipStation: seen.tipStation + x,
    tipReach: seen.tipReach + y,
    tilt: seen.tilt,
  };
}

/** A point of a seen profile back in cut coordinates. */
export function toCut(seen: SeenProfile, x: number, y: number): { a: number; b: number } {
  const c = fromHead(
    { x0: x + seen.tipStation, y0: y + seen.tipReach, x1: 0, y1: 0, cx: 0, cy: 0, r: 0, turn: 0 },
    seen.tilt,
  );
  return { a: c.x0, b: c.y0 };
}

/** A curve of a seen profile back in cut coordinates. */
export function curveToCut(seen: SeenProfile, c: Curve): Curve {
  return fromHead(shiftCurve(c, seen.tipStation, seen.tipReach), seen.tilt);
}

/** +1 where the stations of a profile without undercuts grow from edge to field, -1 where they fall. */
export function forwardWay(tilt: number): 1 | -1 {
  return tilt === Math.PI / 2 ? 1 : -1;
}

function toHead(c: Curve, tilt: number): Curve {
  if (tilt === Math.PI / 2) return c;
  const [cos, sin] = tilt === 0 ? [1, 0] : [Math.cos(tilt), Math.sin(tilt)];
  return mirrorCurve(turnCurve(c, sin, cos), 0);
}

function fromHead(c: Curve, tilt: number): Curve {
  if (tilt === Math.PI / 2) return c;
  const [cos, sin] = tilt === 0 ? [1, 0] : [Math.cos(tilt), Math.sin(tilt)];
  return turnCurve(mirrorCurve(c, 0), sin, -cos);
}

import {
  type Chain,
  type Curve,
  mirrorCurve,
  SAME_LENGTH,
  shiftCurve,
  splitAtExtremes,
  turnCurve,
} from '@fielded/geometry';
