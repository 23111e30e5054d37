import type { Chain } from '@fielded/geometry';
import type { Problem } from '../problem/problem.ts';
import { profileChain } from '../profile/chain.ts';
import { describeOrder, inDegrees, reportRelief, reportWall, reportWood } from './describe-knife.ts';
import { clearEdge } from './edge-clearance.ts';
import { outlineExtent } from './extent.ts';
import { faceReach } from './face-reach.ts';
import { headForHand } from './hand.ts';
import { type KnifeFace, knifeFace } from './knife-face.ts';
import type { KnifeOrder } from './knife-order.ts';
import {
  findGapProblems,
  findLipProblems,
  findRoomProblems,
  findRubbing,
  reportLimiterUnreached,
  reportUnreached,
} from './knife-problems.ts';
import type { KnifeReport } from './knife-report.ts';
import { makeLimiter } from './limiter.ts';
import { type SeenProfile, seeFrom, seeProfile } from './seen-profile.ts';
import { AS_DRAWN, findLip, setSteel } from './set-steel.ts';
import { shapeSteel } from './shape-steel.ts';
import { lengthFromTip, steelPath } from './steel-outline.ts';
import { tightWalls } from './tight-walls.ts';
import { seeSteel } from './wood-profile.ts';

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
      problems: [...findGapProblems(order), reportUnreached(order, leastOf(wood, face), reach.greatest)],
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
    ...findGapProblems(order),
    ...findRoomProblems(order, leastRadius, shape.axial, order.machines),
    ...findRubbing(order, edge, walls, rules),
    ...findLipsOf(order, chain),
    ...(limiter ? [] : [reportLimiterUnreached(order)]),
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

/** Lips that a knife set deeper or further in than it is drawn for would leave; a knife not bought yet is ground as it is set. */
function findLipsOf(order: KnifeOrder, chain: Chain): Problem[] {
  const { knife, setting } = order;
  if (knife === null || setting === AS_DRAWN) return [];
  return findLipProblems(order, knife, findLip(chain, setting), order.steel !== undefined);
}

/** How near the axis the face would have to reach, mm. */
function leastOf(seen: SeenProfile, face: KnifeFace): number {
  return face.radius - outlineExtent(seen.chain).height;
}
