import {
  arcAngle,
  type Chain,
  type Curve,
  line,
  pointAlong,
  reverseCurves,
  SAME_LENGTH,
  shiftCurve,
  splitAtExtremes,
  withEnds,
} from '@fielded/geometry';

/** Where a cut sets its profile. Lengths mm. */
export interface ProfileSetting {
  /** How much further in from the edge, and deeper below the face, the profile is set than it is drawn. */
  readonly right: number;
  readonly down: number;
  /** How much deeper than set the cut comes out in the stock as measured; never less than 0. */
  readonly deeper: number;
}

/** A profile where it is drawn, in stock of nominal thickness. */
export const AS_DRAWN: ProfileSetting = { right: 0, down: 0, deeper: 0 };

/** A profile as set, in cut coordinates from the arris of the stock as planned. */
export interface SetSteel {
  /** The part in the stock: from the edge, a = 0, to the face. */
  readonly wood: Chain;
  /** All of the steel: it runs on past edge and face by the overrun. */
  readonly steel: Chain;
}

/**
 * The steel that a cut needs at its setting (formula K10): the profile moved to where it is set, run on level to the edge and
 * upright to the face of the stock, as the sweep does, and past both by `overrun` mm. A profile that is longer keeps its length.
 *
 * With `overrun` null the steel was measured, and ends where it ends. Where the cutter runs over stock that is thicker than planned, the
 * face of the stock is `deeper` mm higher.
 */
export function setSteel(profile: Chain, { right, down, deeper }: ProfileSetting, overrun: number | null): SetSteel {
  const set = right === 0 && down === 0 ? profile : profile.map((c) => shiftCurve(c, right, down));
  const face = 0 - deeper;
  if (overrun === null) return { wood: withinStock(set, face), steel: set };
  return { wood: withinStock(runOut(set, 0, face), face), steel: runOut(set, 0 - overrun, face - overrun) };
}

/** How far before the edge and before the face a profile ends as it is set, mm: measured steel leaves a lip as wide there. 0 where it runs on. */
export function findLip(profile: Chain, { right, down, deeper }: ProfileSetting): { edge: number; face: number } {
  const [first, last] = [profile[0]!, profile[profile.length - 1]!];
  return { edge: Math.max(0, first.x0 + right), face: Math.max(0, last.y1 + down + deeper) };
}

/** A chain with straight run-outs: level from its first point to a = `edge`, upright from its last to b = `face`. */
function runOut(chain: Chain, edge: number, face: number): Chain {
  const [first, last] = [chain[0]!, chain[chain.length - 1]!];
  const run = [...chain];
  if (first.x0 - edge > SAME_LENGTH) run.unshift(line(edge, first.y0, first.x0, first.y0));
  if (last.y1 - face > SAME_LENGTH) run.push(line(last.x1, last.y1, last.x1, face));
  return joinStraight(run);
}

/** Joins a run-out with a level first line or an upright last line, so that they become one. */
function joinStraight(chain: Curve[]): Chain {
  const [first, second] = chain;
  if (second && isLevel(first!) && isLevel(second) && first!.x0 < second.x0)
    chain.splice(0, 2, line(first!.x0, first!.y0, second.x1, second.y1));
  const [last, before] = [chain.at(-1)!, chain.at(-2)];
  if (before && isUpright(last) && isUpright(before) && last.y1 < before.y1)
    chain.splice(-2, 2, line(before.x0, before.y0, last.x1, last.y1));
  return chain;
}

function isLevel(c: Curve): boolean {
  return c.turn === 0 && c.y0 === c.y1 && c.x1 > c.x0;
}

function isUpright(c: Curve): boolean {
  return c.turn === 0 && c.x0 === c.x1 && c.y1 < c.y0;
}

/** The chain without its parts beyond the edge at its start and above the face at its end. */
function withinStock(chain: Chain, face: number): Chain {
  let curves: readonly Curve[] = chain;
  if (chain[0]!.x0 < -SAME_LENGTH) curves = dropBefore(curves, (p) => p.x);
  if (chain[chain.length - 1]!.y1 < face - SAME_LENGTH)
    curves = reverseCurves(dropBefore(reverseCurves(curves), (p) => p.y - face));
  return curves;
}

/** The chain from the point at which `inside` first reaches 0; the whole chain where it never does. */
function dropBefore(chain: readonly Curve[], inside: (p: { x: number; y: number }) => number): readonly Curve[] {
  const curves = splitAtExtremes(chain);
  // A curve that ends there to within rounding would leave a sliver.
  const at = curves.findIndex((c) => inside({ x: c.x1, y: c.y1 }) > SAME_LENGTH);
  if (at < 0) return chain;
  const c = curves[at]!;
  const angle = arcAngle(c);
  // `inside` only grows along this monotonic curve: find the point by bisection.
  let [from, to] = [0, 1];
  for (let i = 0; i < 60; i++) {
    const middle = (from + to) / 2;
    if (inside(pointAlong(c, middle, angle)) > 0) to = middle;
    else from = middle;
  }
  const { x, y } = pointAlong(c, to, angle);
  return [withEnds(c, x, y, c.x1, c.y1), ...curves.slice(at + 1)];
}
