import { type Curve, SAME_LENGTH, splitAtExtremes } from '@fielded/geometry';
import { type KnifeFace, knifePoint, type SteelPoint } from './knife-face.ts';
import type { SeenProfile } from './seen-profile.ts';

/**
 * The knife's ordinates: at every multiple of `step` mm along the tip line, and at both ends, how far the edge lies back
 * from it.
 *
 * In closed form from the profile, not from the fitted outline. Where the outline has several points at one station (a
 * wall square to the axis, an undercut) the foremost is given: the one that cuts. Throws RangeError for a step that is not
 * above 0, and where the face does not reach. `gap` sets every station back by that much on the radius: the limiter's.
 *
 * @example knifeOrdinates(seen, face, 1)[0] // { s: -1.5, t: 0 }: the top of an upright shoulder 1.5 high
 */
export function knifeOrdinates(seen: SeenProfile, face: KnifeFace, step: number, gap = 0): SteelPoint[] {
  const profile = splitAtExtremes(seen.chain);
  return stationsOf(profile, face.cosShear, step).map(({ s, station }) => ({
    s,
    t: knifePoint(face, station, face.radius + reachAt(profile, station) - gap).t,
  }));
}

/** The same for an outline taken off the steel, which is drawn with its reach along the steel's face. */
export function steelOrdinates(steel: SeenProfile, step: number): SteelPoint[] {
  const outline = splitAtExtremes(steel.chain);
  return stationsOf(outline, 1, step).map(({ s }) => ({ s, t: 0 - reachAt(outline, s) }));
}

/** Multiples of the step that lie on the knife, and its two ends; `scale` is the way along the axis for 1 along the knife. */
function stationsOf(profile: readonly Curve[], scale: number, step: number): { s: number; station: number }[] {
  if (!(step > 0)) throw new RangeError(`ordinates need a step above 0 mm, got ${step}`);
  const ends = profile.flatMap((c) => [c.x0, c.x1]);
  const from = Math.min(...ends);
  const to = Math.max(...ends);
  // The ends keep their station, not s · scale: where the profile is square to the tip line rounding would show.
  const stations = [{ s: from / scale + 0, station: from }];
  const inside = (k: number) => k * step * scale < to - SAME_LENGTH;
  for (let k = Math.ceil((from + SAME_LENGTH) / scale / step); inside(k); k++) {
    stations.push({ s: k * step + 0, station: k * step * scale });
  }
  if (to > from) stations.push({ s: to / scale, station: to });
  return stations;
}

/** Greatest height of the profile at a station; its curves must not turn back in x or y. */
export function reachAt(profile: readonly Curve[], x: number): number {
  let greatest = Number.NEGATIVE_INFINITY;
  for (const c of profile) {
    const from = Math.min(c.x0, c.x1);
    const to = Math.max(c.x0, c.x1);
    if (x < from - SAME_LENGTH || x > to + SAME_LENGTH) continue;
    const upright = to - from <= SAME_LENGTH;
    greatest = Math.max(greatest, upright ? Math.max(c.y0, c.y1) : heightOn(c, Math.min(to, Math.max(from, x))));
  }
  return greatest;
}

function heightOn(c: Curve, x: number): number {
  if (x === c.x0) return c.y0;
  if (x === c.x1) return c.y1;
  if (c.turn === 0) return c.y0 + ((c.y1 - c.y0) * (x - c.x0)) / (c.x1 - c.x0);
  const square = (c.r - (x - c.cx)) * (c.r + (x - c.cx));
  // Run to the right, an arc is on the lower half of its circle when it turns anticlockwise.
  const half = c.turn * Math.sign(c.x1 - c.x0);
  return c.cy - half * Math.sqrt(Math.max(0, square));
}
