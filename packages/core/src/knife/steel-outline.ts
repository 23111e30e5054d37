import {
  type ArcFit,
  arcAngle,
  type Chain,
  type Corners,
  type Curve,
  cornerAngle,
  curveLength,
  depthPath,
  FIT_TOLERANCE,
  findPeak,
  fitArcs,
  flipCurve,
  type Heading,
  pointAlong,
  SAME_LENGTH,
  SMOOTH_JOINT,
  type SmoothCurve,
  splitAtExtremes,
} from '@fielded/geometry';
import { faceOffset, type KnifeFace, knifePoint } from './knife-face.ts';
import type { SeenProfile } from './seen-profile.ts';

/**
 * The outline of the steel that leaves a profile, as lines and tangent arcs: x = s along the tip line, y = t towards the axis, mm.
 *
 * `gap` sets every station back by so many mm on the radius, for the limiter; 0 for the knife. Without shear, lines along the axis and
 * square to it stay lines. All else is fitted within `tolerance` mm with arcs that are tangent to each other except at the profile's
 * corners, and the greatest deviation is measured. With neither rake nor shear the outline is the mirrored profile itself.
 *
 * @throws RangeError where the face does not reach (see `faceReach`).
 */
export function steelOutline(seen: SeenProfile, face: KnifeFace, gap = 0, tolerance: number = FIT_TOLERANCE): ArcFit {
  if (face.offset === 0 && face.sinShear === 0) {
    return { chain: seen.chain.map((c) => flipCurve(c, gap)), deviation: 0 };
  }
  const chain: Curve[] = [];
  let deviation = 0;
  const runs = smoothRuns(seen.chain, face);
  for (const [i, run] of runs.entries()) {
    const corners = { start: meetsAtCorner(runs[i - 1], run), end: meetsAtCorner(run, runs[i + 1]) };
    const fit = fitRun(run, face, gap, tolerance, corners);
    for (const c of fit.chain) chain.push(c);
    deviation = Math.max(deviation, fit.deviation);
  }
  return { chain, deviation };
}

/** The steel that cuts a curve of the seen profile, as a smooth curve to be fitted or measured. */
export function steelCurve(c: Curve, face: KnifeFace, gap = 0): SmoothCurve {
  const angle = arcAngle(c);
  return (u) => toSteel(pointAlong(c, u, angle), face, gap);
}

/** The point and tangent of the steel for a point and tangent of the seen profile: `knifePoint` and its derivative. */
function toSteel(p: Heading, face: KnifeFace, gap: number): Heading {
  const radius = face.radius + p.y - gap;
  const { s, t } = knifePoint(face, p.x, radius);
  const up = face.seat - t;
  const ds = p.dx / face.cosShear;
  return { x: s, y: t, dx: ds, dy: (faceOffset(face, p.x) * face.sinShear * ds - radius * p.dy) / up };
}

/** The chain split at its corners, and before and after each line whose steel is straight. */
function smoothRuns(chain: Chain, face: KnifeFace): Curve[][] {
  const runs: Curve[][] = [];
  let before: Curve | undefined;
  for (const c of chain) {
    const alone = staysStraight(c, face);
    const goesOn = before && !alone && !staysStraight(before, face) && cornerAngle(before, c) < SMOOTH_JOINT;
    if (goesOn) runs[runs.length - 1]!.push(c);
    else runs.push([c]);
    before = c;
  }
  return runs;
}

/** Whether there is a corner between one run and the next; the ends of the profile count as corners. */
function meetsAtCorner(before: readonly Curve[] | undefined, after: readonly Curve[] | undefined): boolean {
  if (before === undefined || after === undefined) return true;
  return cornerAngle(before[before.length - 1]!, after[0]!) >= SMOOTH_JOINT;
}

/** Whether the steel that cuts a curve is a straight line. */
function staysStraight(c: Curve, face: KnifeFace): boolean {
  if (c.turn !== 0 || face.sinShear !== 0) return false;
  return Math.abs(c.x1 - c.x0) <= SAME_LENGTH || Math.abs(c.y1 - c.y0) <= SAME_LENGTH;
}

/** A run fitted curve by curve, or as a whole where that takes fewer arcs. */
function fitRun(run: readonly Curve[], face: KnifeFace, gap: number, tolerance: number, corners: Corners): ArcFit {
  const last = run.length - 1;
  const fits = run.map((c, i) => {
    const ends = { start: i === 0 && corners.start, end: i === last && corners.end };
    return fitArcs(steelCurve(c, face, gap), tolerance, ends);
  });
  const apart = { chain: fits.flatMap((f) => f.chain), deviation: Math.max(...fits.map((f) => f.deviation)) };
  if (run.length === 1) return apart;
  const together = fitArcs(runCurve(run, face, gap), tolerance, corners);
  return together.chain.length < apart.chain.length && together.deviation <= tolerance ? together : apart;
}

/** Several curves as one smooth curve; each takes the share of u that it has of their length. */
function runCurve(run: readonly Curve[], face: KnifeFace, gap: number): SmoothCurve {
  const starts = [0];
  for (const c of run) starts.push(starts[starts.length - 1]! + curveLength(c));
  const total = starts[run.length]!;
  const curves = run.map((c) => steelCurve(c, face, gap));
  return (u) => {
    const at = u * total;
    let i = run.length - 1;
    while (i > 0 && starts[i]! > at) i--;
    return curves[i]!(u === 1 ? 1 : Math.min(1, (at - starts[i]!) / (starts[i + 1]! - starts[i]!)));
  };
}

/** Path data whose numbers are (s, t). */
export function steelPath(chain: Chain): string {
  return depthPath(chain);
}

/** The extent of the exact outline along t, mm. */
export function steelLength(chain: Chain, face: KnifeFace): number {
  const { least, most } = rangeAlong(chain, face);
  return most - least;
}

/**
 * The greatest t of the exact outline, measured from the tip line or, with shear, from what lies beyond that, mm. A tip that cuts no
 * wood, above the face or past the edge, is still ground.
 */
export function lengthFromTip(chain: Chain, face: KnifeFace): number {
  const { least, most } = rangeAlong(chain, face);
  return most - Math.min(0, least);
}

/** The least and the greatest t of the exact outline: at an end of a curve, where it is level, or with shear at a peak between these. */
function rangeAlong(chain: Chain, face: KnifeFace): { least: number; most: number } {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const c of splitAtExtremes(chain)) {
    const at = steelCurve(c, face);
    const t = (u: number) => at(u).y;
    const places = [0, 1];
    if (face.sinShear !== 0)
      places.push(
        findPeak(t, 0, 1, 40),
        findPeak((u) => -t(u), 0, 1, 40),
      );
    for (const u of places) [least, most] = [Math.min(least, t(u)), Math.max(most, t(u))];
  }
  return { least, most };
}
