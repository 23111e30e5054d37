import { splitAtExtremes } from '../geometry/along.ts';
import type { Heading } from '../geometry/biarc.ts';
import { type Chain, flipCurve } from '../geometry/curve.ts';
import type { ArcFit } from '../geometry/fit-arcs.ts';
import { pathData } from '../geometry/path-data.ts';
import { findPeak } from '../geometry/peak.ts';
import type { Units } from '../measure/length.ts';
import type { Problem } from '../problem.ts';
import { profileChain } from '../profile/chain.ts';
import type { Profile } from '../profile/profile.ts';
import { clearEdge, type LeastAlong } from './edge-clearance.ts';
import { faceReach } from './face-reach.ts';
import { cuttingPoint, type KnifeFace, knifeFace } from './knife-face.ts';
import {
  findGapProblems,
  findRoomProblems,
  findRubbing,
  type KnifeSubject,
  reportLimiterUnreached,
  reportUnreached,
} from './knife-problems.ts';
import type { KnifeReport, LimiterReport } from './knife-report.ts';
import { knifeOrdinates, steelOrdinates } from './ordinates.ts';
import { type SeenProfile, seeProfile } from './seen-profile.ts';
import type { Head, Machine, Rules } from './shop.ts';
import { steelCurve, steelOutline } from './steel-outline.ts';
import { tightWalls } from './tight-walls.ts';
import { seeSteel } from './wood-profile.ts';

/** What a knife is wanted for. Lengths mm, `tilt` in radians. */
export interface KnifeOrder {
  readonly name: string;
  readonly knife: string | null;
  readonly headName: string;
  readonly head: Head;
  /** What it leaves in the wood. */
  readonly profile: Profile;
  /** Its outline as taken off the steel, where it was; then that is the outline, and nothing is fitted. */
  readonly steel?: Profile;
  readonly tilt: number;
  /** How much further out along the radius the profile is set than it is drawn. */
  readonly setFurther: number;
  readonly groundFor: KnifeReport['groundFor'];
  readonly rules: Rules;
  readonly machines: Readonly<Record<string, Machine>>;
  readonly units: Units;
  /** Its place in the file, for its problems. */
  readonly at: string;
}

/** Ordinates stand this far apart, mm: 1 mm, or 1/32 in. */
const ORDINATE_STEP = { mm: 1, in: 25.4 / 32 };

/** Places along every curve where the gap to the limiter is looked at. */
const LOOKED_AT = 16;

/**
 * The knife for a profile: its outline, ordinates, limiter and clearances, and its problems, which are also its warnings.
 *
 * `knife` is null where the head's face never reaches the profile's least radius; the one problem then says so.
 */
export function makeKnife(order: KnifeOrder): { knife: KnifeReport | null; problems: readonly Problem[] } {
  const { head, tilt, rules } = order;
  const subject: KnifeSubject = order;
  const face = knifeFace(head);
  const seen = seeProfile(profileChain(order.profile), tilt);
  const reach = faceReach(seen, face);
  const leastRadius = face.radius - seen.tipReach - order.setFurther;
  if (!reach.reaches)
    return {
      knife: null,
      problems: [...findGapProblems(subject), reportUnreached(subject, leastOf(seen, face), reach.greatest)],
    };

  const steel = order.steel && seeSteel(order.steel, face, tilt);
  const outline: ArcFit = steel
    ? { chain: steel.chain.map((c) => flipCurve(c, 0)), deviation: 0 }
    : steelOutline(seen, face);
  const step = ORDINATE_STEP[order.units];
  const woodSize = extentOf(seen.chain);
  const limiter = faceReach(seen, face, head.limiterGap).reaches
    ? makeLimiter(seen, face, head.limiterGap, step)
    : null;
  const edge = clearEdge(seen, face, head);
  const walls = tightWalls(seen, face, head.wedge, rules.leastSideClearance);
  const problems = [
    ...findGapProblems(subject),
    ...findRoomProblems(subject, leastRadius, woodSize.width, order.machines),
    ...findRubbing(subject, edge, walls, rules),
    ...(limiter ? [] : [reportLimiterUnreached(subject)]),
  ];
  const knife: KnifeReport = {
    cut: order.name,
    knife: order.knife,
    head: order.headName,
    cuttingRadius: face.radius,
    leastRadius,
    rake: degrees(head.rake),
    shear: degrees(head.shear),
    wedge: degrees(head.wedge),
    presented: degrees(tilt),
    groundFor: order.groundFor,
    tipAt: seen.tipStation,
    length: steel ? extentOf(steel.chain).height : steelLength(seen, face),
    width: woodSize.width / face.cosShear,
    outline: steelPath(outline.chain),
    pieces: outline.chain.length,
    deviation: outline.deviation,
    ordinates: steel ? steelOrdinates(steel, step) : knifeOrdinates(seen, face, step),
    wood: {
      outline: steelPath(seen.chain.map((c) => flipCurve(c, 0))),
      length: woodSize.height,
      width: woodSize.width,
    },
    limiter,
    clearance: { ...inDegrees(edge.back), side: inDegrees(edge.side) },
    heel: edge.heel,
    walls: walls.map((w) => ({
      ...w,
      sideClearance: degrees(w.sideClearance),
      draft: w.draft === null ? null : degrees(w.draft),
    })),
    warnings: problems,
  };
  return { knife, problems };
}

/** The limiter, and how far the knife stands out beyond it, at the ends of every curve and at places between. */
function makeLimiter(seen: SeenProfile, face: KnifeFace, gap: number, step: number): LimiterReport {
  const fit = steelOutline(seen, face, gap);
  const onRadius: number[] = [];
  const alongFace: number[] = [];
  for (const c of splitAtExtremes(seen.chain)) {
    const [knife, limiter] = [steelCurve(c, face), steelCurve(c, face, gap)];
    for (let i = 0; i <= LOOKED_AT; i++) {
      const [edge, behind] = [knife(i / LOOKED_AT), limiter(i / LOOKED_AT)];
      const radiusOf = (p: Heading) => cuttingPoint(face, { s: p.x, t: p.y }).radius;
      onRadius.push(radiusOf(edge) - radiusOf(behind));
      alongFace.push(behind.y - edge.y);
    }
  }
  return {
    outline: steelPath(fit.chain),
    pieces: fit.chain.length,
    deviation: fit.deviation,
    ordinates: knifeOrdinates(seen, face, step, gap),
    gap: { ...rangeOf(onRadius), alongFace: rangeOf(alongFace) },
  };
}

function rangeOf(values: readonly number[]): { least: number; most: number } {
  return { least: Math.min(...values), most: Math.max(...values) };
}

/** Extent of the exact outline along t: its ends, its level places, and with shear the peaks between them. */
function steelLength(seen: SeenProfile, face: KnifeFace): number {
  const ts: number[] = [];
  for (const c of splitAtExtremes(seen.chain)) {
    const t = (u: number) => at(u).y;
    const at = steelCurve(c, face);
    ts.push(t(0), t(1));
    if (face.sinShear !== 0) ts.push(t(findPeak(t, 0, 1, 40)), t(findPeak((u) => -t(u), 0, 1, 40)));
  }
  return Math.max(...ts) - Math.min(...ts);
}

function extentOf(chain: Chain): { width: number; height: number } {
  const monotone = splitAtExtremes(chain);
  const xs = monotone.flatMap((c) => [c.x0, c.x1]);
  const ys = monotone.flatMap((c) => [c.y0, c.y1]);
  return { width: Math.max(...xs) - Math.min(...xs), height: Math.max(...ys) - Math.min(...ys) };
}

function leastOf(seen: SeenProfile, face: KnifeFace): number {
  return face.radius - extentOf(seen.chain).height;
}

/** Path data whose numbers are (s, t): `pathData` turns y down, so t goes in as −t. */
function steelPath(chain: Chain): string {
  return pathData(
    chain.map((c) => flipCurve(c, 0)),
    0,
    false,
  );
}

function inDegrees({ least, at }: LeastAlong): LeastAlong {
  return { least: degrees(least), at };
}

function degrees(angle: number): number {
  return (angle * 180) / Math.PI;
}
