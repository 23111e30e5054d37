import {
  arcAngle,
  type Chain,
  type Heading,
  pointAlong,
  SAME_LENGTH,
  type SmoothCurve,
  splitAtExtremes,
} from '@fielded/geometry';
import type { KnifeFace, SteelPoint } from './knife-face.ts';
import type { SeenProfile } from './seen-profile.ts';
import { steelCurve } from './steel-outline.ts';

/** How far a chord between two ordinates may lie from the edge, mm. A little less than 0.05, since the distance is measured at a few places only. */
const AIMED_AT = 0.045;

/** Places between two ordinates at which the distance is measured, and how often a stretch may be halved. */
const LOOKED_AT = 8;
const MOST_HALVINGS = 12;

/** A multiple of the step that is nearer to a corner than this share of the step is left out, since the corner is in the list. */
const NEAR_CORNER = 0.1;

/**
 * The ordinates of a knife in the order of its edge, from the end of least s to the other, walls and corners included: one at
 * every corner, at every multiple of `step` mm in s (in t where a curve runs more that way), and between them as many as keep
 * every chord within 0.05 mm of the edge (formula K11).
 *
 * Computed in closed form from the profile as the head sees it, not from the fitted outline.
 *
 * @throws RangeError for a step that is not above 0, and where the face does not reach.
 * @example edgeOrdinates(seen.chain, face, 1)[0] // { s: -2.5, t: 0 }: the overrun of an upright shoulder 1.5 high
 */
export function edgeOrdinates(chain: Chain, face: KnifeFace, step: number): SteelPoint[] {
  return listAlong(
    splitAtExtremes(chain).map((c) => steelCurve(c, face)),
    step,
  );
}

/** The ordinates of an outline that was measured on the steel, whose reach is drawn along the steel's face. See `edgeOrdinates`. */
export function steelOrdinates(steel: SeenProfile, step: number): SteelPoint[] {
  const curves = splitAtExtremes(steel.chain).map((c): SmoothCurve => {
    const angle = arcAngle(c);
    return (u) => {
      const p = pointAlong(c, u, angle);
      return { x: p.x, y: 0 - p.y, dx: p.dx, dy: 0 - p.dy };
    };
  });
  return listAlong(curves, step);
}

function listAlong(curves: readonly SmoothCurve[], step: number): SteelPoint[] {
  if (!(step > 0)) throw new RangeError(`ordinates need a step above 0 mm, got ${step}`);
  const list: SteelPoint[] = [];
  for (const curve of curves)
    for (const { x, y } of pointsOn(curve, step)) {
      const last = list[list.length - 1];
      if (last && Math.hypot(last.s - x, last.t - y) <= SAME_LENGTH) continue;
      list.push({ s: x + 0, t: y + 0 });
    }
  return list[0]!.s <= list[list.length - 1]!.s ? list : list.reverse();
}

/** The points of one curve, both ends included. */
function pointsOn(curve: SmoothCurve, step: number): Heading[] {
  const [start, end] = [curve(0), curve(1)];
  const upright = Math.abs(end.x - start.x) < Math.abs(end.y - start.y);
  const straight = chordOff(curve, 0, 1, start, end) < SAME_LENGTH;
  const key = upright ? 'y' : 'x';
  // The two ends of a straight wall describe it.
  const marks = upright && straight ? [] : placesOf(curve, key, start[key], end[key], step);
  const points = [start];
  let u = 0;
  for (const next of [...marks, 1]) {
    for (const p of between(curve, u, next)) points.push(p);
    points.push(next === 1 ? end : roundOff(curve(next), key, step));
    u = next;
  }
  return points;
}

/** The u at which a curve passes multiples of the step, in the order it passes them. */
function placesOf(curve: SmoothCurve, key: 'x' | 'y', from: number, to: number, step: number): number[] {
  const [low, high] = [Math.min(from, to), Math.max(from, to)];
  const places: number[] = [];
  const near = NEAR_CORNER * step;
  for (let k = Math.ceil((low + near) / step); k * step <= high - near; k++)
    places.push(placeWhere(curve, key, k * step, to > from));
  return places.sort((a, b) => a - b);
}

function placeWhere(curve: SmoothCurve, key: 'x' | 'y', value: number, rising: boolean): number {
  let [from, to] = [0, 1];
  for (let i = 0; i < 60; i++) {
    const middle = (from + to) / 2;
    if (curve(middle)[key] < value === rising) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}

/** The point with its coordinate at exactly the multiple of the step that bisection came close to. */
function roundOff(p: Heading, key: 'x' | 'y', step: number): Heading {
  const whole = Math.round(p[key] / step) * step;
  if (!(Math.abs(whole - p[key]) < SAME_LENGTH)) return p;
  return { x: key === 'x' ? whole : p.x, y: key === 'y' ? whole : p.y, dx: p.dx, dy: p.dy };
}

/** Points between two u of a curve: a stretch is halved until its chord is near enough to the curve. */
function between(curve: SmoothCurve, from: number, to: number, halvings = 0): Heading[] {
  if (halvings === MOST_HALVINGS || chordOff(curve, from, to, curve(from), curve(to)) <= AIMED_AT) return [];
  const middle = (from + to) / 2;
  return [...between(curve, from, middle, halvings + 1), curve(middle), ...between(curve, middle, to, halvings + 1)];
}

/** The greatest distance of a curve from its chord between two u, mm. */
function chordOff(curve: SmoothCurve, from: number, to: number, p: Heading, q: Heading): number {
  const [dx, dy] = [q.x - p.x, q.y - p.y];
  const length = Math.hypot(dx, dy);
  let most = 0;
  for (let i = 1; i < LOOKED_AT; i++) {
    const at = curve(from + ((to - from) * i) / LOOKED_AT);
    const [x, y] = [at.x - p.x, at.y - p.y];
    most = Math.max(most, length === 0 ? Math.hypot(x, y) : Math.abs(x * dy - y * dx) / length);
  }
  return most;
}
