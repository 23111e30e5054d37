import { type ArcFit, type Chain, findPeak, flipCurve, line, SAME_LENGTH, splitAtExtremes } from '@fielded/geometry';
import type { Units } from '../measure/length.ts';
import type { Language } from '../problem/language.ts';
import type { Problem } from '../problem/problem.ts';
import type { Terms } from '../problem/terms.ts';
import { profileChain } from '../profile/chain.ts';
import type { Profile } from '../profile/profile.ts';
import type { Head, Machine, Rules } from '../shop/shop.ts';
import { clearEdge, type LeastAlong } from './edge-clearance.ts';
import { faceReach } from './face-reach.ts';
import { cuttingPoint, type KnifeFace, knifeFace, localRake, type SteelPoint } from './knife-face.ts';
import {
  findGapProblems,
  findRoomProblems,
  findRubbing,
  type KnifeSubject,
  reportLimiterUnreached,
  reportUnreached,
} from './knife-problems.ts';
import type { KnifeOrdinate, KnifeReport } from './knife-report.ts';
import { makeLimiter } from './limiter.ts';
import { limiterProfile } from './limiter-profile.ts';
import { knifeOrdinates, steelOrdinates } from './ordinates.ts';
import { type SeenProfile, seeProfile } from './seen-profile.ts';
import { steelCurve, steelOutline, steelPath } from './steel-outline.ts';
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
  /** Where the panel's edge and its worked face lie in the profile's own coordinates, as the cut is set: 0 and 0 as drawn. */
  readonly edgeAt: number;
  readonly faceAt: number;
  /** Whether the hand is assumed. */
  readonly assumed: boolean;
  readonly groundFor: KnifeReport['groundFor'];
  readonly rules: Rules;
  readonly machines: Readonly<Record<string, Machine>>;
  readonly units: Units;
  readonly terms?: Terms;
  readonly language?: Language;
  /** Its place in the file, for its problems. */
  readonly at: string;
}

/** Ordinates stand this far apart, mm: 1 mm, or 1/32 in. */
const ORDINATE_STEP = { mm: 1, in: 25.4 / 32 };

/**
 * The knife for a profile: its outline, ordinates, limiter and clearances, and its problems, which are also its warnings.
 *
 * `knife` is null where the head's face never reaches the profile's least radius; the one problem then says so.
 */
export function makeKnife(order: KnifeOrder): { knife: KnifeReport | null; problems: readonly Problem[] } {
  const { head, tilt, rules } = order;
  const subject: KnifeSubject = order;
  const face = knifeFace(head);
  // What was measured is all the steel there is; what is to be ground has to clear the wood out to edge and face.
  const chain = profileChain(order.profile);
  const { edgeAt, faceAt } = order;
  const seen = seeProfile(order.steel ? chain : runOut(chain, edgeAt, faceAt), tilt);
  const reach = faceReach(seen, face);
  const leastRadius = face.radius - seen.tipReach - order.setFurther;
  if (!reach.reaches)
    return {
      knife: null,
      problems: [...findGapProblems(subject), reportUnreached(subject, leastOf(seen, face), reach.greatest)],
    };

  const steel = order.steel && seeSteel(order.steel, face, tilt);
  const ground = steel ? { seen, edge: 0, face: 0 } : withOverrun(chain, order, face);
  const outline: ArcFit = steel
    ? { chain: steel.chain.map((c) => flipCurve(c, 0)), deviation: 0 }
    : steelOutline(ground.seen, face);
  const step = ORDINATE_STEP[order.units];
  const woodSize = extentOf(seen.chain);
  const steelSize = extentOf(ground.seen.chain);
  const limiter = limiterOf(ground.seen, order, face, step);
  const edge = clearEdge(seen, face, head);
  const walls = tightWalls(seen, face, head.wedge, rules.leastSideClearance);
  const problems = [
    ...findGapProblems(subject),
    ...findRoomProblems(subject, leastRadius, steelSize.width, order.machines),
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
    assumed: order.assumed,
    overrun: { edge: ground.edge, face: ground.face },
    groundFor: order.groundFor,
    tipAt: seen.tipStation,
    length: steel ? extentOf(steel.chain).height : steelLength(seen, face),
    width: steelSize.width / face.cosShear,
    outline: steelPath(outline.chain),
    pieces: outline.chain.length,
    deviation: outline.deviation,
    ordinates: (steel ? steelOrdinates(steel, step) : knifeOrdinates(ground.seen, face, step)).map((p) =>
      withRake(p, face, head.wedge),
    ),
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

function withRake(p: SteelPoint, face: KnifeFace, wedge: number): KnifeOrdinate {
  const { station, radius } = cuttingPoint(face, p);
  const rake = localRake(face, station, radius);
  return { ...p, radius, rake: degrees(rake), clearance: degrees(Math.PI / 2 - rake - wedge) };
}

/** A chain run straight on from its first point out to `edge` and from its last up to `face`, cut coordinates. */
function runOut(chain: Chain, edge: number, face: number): Chain {
  const [first, last] = [chain[0]!, chain[chain.length - 1]!];
  const run = [...chain];
  if (first.x0 > edge + SAME_LENGTH) run.unshift(line(edge, first.y0, first.x0, first.y0));
  if (last.y1 > face + SAME_LENGTH) run.push(line(last.x1, last.y1, last.x1, face));
  return run;
}

/** The profile with the shop's overrun past edge and face, as much of it as the face of the knife gets in to. */
function withOverrun(
  chain: Chain,
  { edgeAt, faceAt, rules, tilt }: KnifeOrder,
  face: KnifeFace,
): { seen: SeenProfile; edge: number; face: number } {
  const { overrun } = rules;
  const tries = [
    [overrun, overrun],
    [0, overrun],
    [overrun, 0],
  ] as const;
  for (const [edge, top] of tries) {
    const seen = seeProfile(runOut(chain, edgeAt - edge, faceAt - top), tilt);
    if (faceReach(seen, face).reaches) return { seen, edge, face: top };
  }
  return { seen: seeProfile(runOut(chain, edgeAt, faceAt), tilt), edge: 0, face: 0 };
}

/** The limiter behind a knife; null where its face does not get in that far, or where nothing is left between walls. */
function limiterOf(ground: SeenProfile, { head, faceAt, tilt }: KnifeOrder, face: KnifeFace, step: number) {
  const { limiterGap } = head;
  const chain = limiterProfile(ground, limiterGap, faceAt * Math.sin(tilt) - ground.tipReach);
  if (chain === null) return null;
  const seen = { ...ground, chain };
  return faceReach(seen, face, limiterGap).reaches ? makeLimiter(seen, ground, face, limiterGap, step) : null;
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

function inDegrees({ least, at }: LeastAlong): LeastAlong {
  return { least: degrees(least), at };
}

function degrees(angle: number): number {
  return (angle * 180) / Math.PI;
}
