import { type ArcFit, flipCurve } from '@fielded/geometry';
import { toDegrees } from '../measure/angle.ts';
import type { Units } from '../measure/length.ts';
import type { Language } from '../problem/language.ts';
import type { Problem } from '../problem/problem.ts';
import type { Terms } from '../problem/terms.ts';
import { profileChain } from '../profile/chain.ts';
import type { Profile } from '../profile/profile.ts';
import type { Head, Machine, Rules } from '../shop/shop.ts';
import { clearEdge, type LeastAlong } from './edge-clearance.ts';
import { outlineExtent } from './extent.ts';
import { faceReach } from './face-reach.ts';
import { headForHand } from './hand.ts';
import { cuttingPoint, type KnifeFace, knifeFace, knifePoint, localRake, type SteelPoint } from './knife-face.ts';
import {
  findGapProblems,
  findLipProblems,
  findRoomProblems,
  findRubbing,
  type KnifeSubject,
  reportLimiterUnreached,
  reportUnreached,
} from './knife-problems.ts';
import type { KnifeOrdinate, KnifeReport, WallReport } from './knife-report.ts';
import { makeLimiter } from './limiter.ts';
import { edgeOrdinates, steelOrdinates } from './ordinates.ts';
import { type SeenProfile, seeFrom, seeProfile } from './seen-profile.ts';
import { AS_DRAWN, findLip, type Setting, setSteel } from './set-steel.ts';
import { lengthFromTip, steelOutline, steelPath } from './steel-outline.ts';
import { type TightWall, tightWalls } from './tight-walls.ts';
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
  /** Where the cut sets the profile, and on what stock. */
  readonly setting: Setting;
  readonly groundFor: KnifeReport['groundFor'];
  /** Whether nobody said what it is ground for. */
  readonly assumed: boolean;
  /** Relief ground on its walls square to the spindle, radians, where the shop says. */
  readonly sideRelief?: number;
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
  const { tilt, rules, setting } = order;
  const head = headForHand(order.head, order.groundFor);
  const subject: KnifeSubject = order;
  const face = knifeFace(head);

  // The wood's outline, and the steel's that runs on past edge and face: what was measured is all the steel there is.
  const chain = profileChain(order.profile);
  const overrun = order.steel ? null : rules.overrun;
  const set = setSteel(chain, setting, overrun);
  const whole = seeProfile(set.steel, tilt);
  const wood = seeFrom(set.wood, whole);

  // Does the face get in as far as the wood goes? If not, there is no such knife.
  const reach = faceReach(wood, face);
  const leastRadius = face.radius - whole.tipReach;
  if (!reach.reaches)
    return {
      knife: null,
      problems: [...findGapProblems(subject), reportUnreached(subject, leastOf(wood, face), reach.greatest)],
    };

  // Does it get in past the panel's edge too? If not, there is no room for an overrun.
  const seen = faceReach(whole, face).reaches ? whole : wood;
  const steel = order.steel && seeSteel(order.steel, face, tilt);
  const step = ORDINATE_STEP[order.units];
  const shape = shapeSteel(seen, steel, face, head, step);

  // What backs off behind the edge, what rubs, and what stands in the way.
  const limiter = makeLimiter(seen, face, head.limiterGap, step) ?? makeLimiter(wood, face, head.limiterGap, step);
  const edge = clearEdge(wood, face, head);
  const walls = tightWalls(wood, face, head.wedge, rules.leastSideClearance);
  const problems = [
    ...findGapProblems(subject),
    ...findRoomProblems(subject, leastRadius, shape.axial, order.machines),
    ...findRubbing(subject, edge, walls, rules),
    ...(order.knife === null || setting === AS_DRAWN
      ? []
      : findLipProblems(subject, order.knife, findLip(chain, setting), order.steel !== undefined)),
    ...(limiter ? [] : [reportLimiterUnreached(subject)]),
  ];
  const past = seen === whole ? (overrun ?? 0) : 0;
  const knife: KnifeReport = {
    ...describeOrder(order, head, face, leastRadius),
    tipAt: whole.tipStation,
    length: steel ? outlineExtent(steel.chain).height : lengthFromTip(wood.chain, face),
    width: shape.width,
    overrun: { edge: past, face: past },
    outline: steelPath(shape.outline.chain),
    pieces: shape.outline.chain.length,
    deviation: shape.outline.deviation,
    ordinates: shape.ordinates,
    wood: reportWood(wood),
    limiter,
    clearance: { ...inDegrees(edge.back), side: inDegrees(edge.side) },
    heel: edge.heel,
    walls: walls.map((w) => reportWall(w, face)),
    sideRelief: walls.length === 0 ? null : reportRelief(order),
    warnings: problems,
  };
  return { knife, problems };
}

/** The steel itself: its outline on the face, how wide it is on the steel and along the spindle, and its ordinates. */
function shapeSteel(seen: SeenProfile, steel: SeenProfile | undefined, face: KnifeFace, head: Head, step: number) {
  const outline: ArcFit = steel
    ? { chain: steel.chain.map((c) => flipCurve(c, 0)), deviation: 0 }
    : steelOutline(seen, face);
  const { width } = outlineExtent(steel ? steel.chain : seen.chain);
  const points = steel ? steelOrdinates(steel, step) : edgeOrdinates(seen.chain, face, step);
  return {
    outline,
    // Sheared, the knife is wider on the steel than the cut is along the spindle.
    width: steel ? width : width / face.cosShear,
    axial: steel ? width * face.cosShear : width,
    ordinates: points.map((p) => withRake(p, face, head.wedge)),
  };
}

/** What the order and the head say, angles in degrees. */
function describeOrder(order: KnifeOrder, head: Head, face: KnifeFace, leastRadius: number) {
  return {
    cut: order.name,
    knife: order.knife,
    head: order.headName,
    cuttingRadius: face.radius,
    leastRadius,
    rake: toDegrees(head.rake),
    shear: toDegrees(head.shear),
    wedge: toDegrees(head.wedge),
    presented: toDegrees(order.tilt),
    groundFor: order.groundFor,
    assumed: order.assumed,
    count: head.knives,
    thickness: head.knifeThickness,
    bodyRadius: head.bodyDiameter / 2,
    headHeight: head.height,
  };
}

function reportWood(wood: SeenProfile): KnifeReport['wood'] {
  const { height, width } = outlineExtent(wood.chain);
  return { outline: steelPath(wood.chain.map((c) => flipCurve(c, 0))), length: height, width };
}

function reportRelief({ rules, sideRelief }: KnifeOrder): NonNullable<KnifeReport['sideRelief']> {
  return {
    least: toDegrees(rules.leastSideClearance),
    ground: sideRelief === undefined ? null : toDegrees(sideRelief),
  };
}

function reportWall({ seenFrom, seenTo, ...w }: TightWall, face: KnifeFace): WallReport {
  const onSteel = (p: { x: number; y: number }) => knifePoint(face, p.x, face.radius + p.y);
  return {
    ...w,
    sideClearance: toDegrees(w.sideClearance),
    draft: w.draft === null ? null : toDegrees(w.draft),
    onSteel: { from: onSteel(seenFrom), to: onSteel(seenTo) },
  };
}

function withRake(p: SteelPoint, face: KnifeFace, wedge: number): KnifeOrdinate {
  const { station, radius } = cuttingPoint(face, p);
  const rake = localRake(face, station, radius);
  return { ...p, radius, rake: toDegrees(rake), clearance: toDegrees(Math.PI / 2 - rake - wedge) };
}

function leastOf(seen: SeenProfile, face: KnifeFace): number {
  return face.radius - outlineExtent(seen.chain).height;
}

function inDegrees({ least, at }: LeastAlong): LeastAlong {
  return { least: toDegrees(least), at };
}
