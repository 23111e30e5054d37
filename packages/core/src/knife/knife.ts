import type { Chain } from '@fielded/geometry';
import type { Problem } from '../problem/problem.ts';
import { describeOrder, inDegrees, reportRelief, reportWall, reportWood } from './describe-knife.ts';
import { clearEdge } from './edge-clearance.ts';
import { outlineExtent } from './extent.ts';
import type { KnifeFace } from './knife-face.ts';
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
import { seeOrder } from './see-order.ts';
import type { SeenProfile } from './seen-profile.ts';
import { AS_DRAWN, findLip } from './set-steel.ts';
import { shapeSteel } from './shape-steel.ts';
import { lengthFromTip, steelPath } from './steel-outline.ts';
import { tightWalls } from './tight-walls.ts';

/** The distance between ordinates, mm: 1 mm, or 1/32 in. */
const ORDINATE_STEP = { mm: 1, in: 25.4 / 32 };

/**
 * The knife for a profile: its outline, ordinates, limiter and clearances, and its problems, which are also its warnings.
 *
 * `knife` is null where the head's face does not reach the profile's least radius; a problem then says so.
 */
export function makeKnife(order: KnifeOrder): { knife: KnifeReport | null; problems: readonly Problem[] } {
  const { rules } = order;
  const { head, face, chain, overrun, whole, wood, ground, steel, greatestReach, leastRadius } = seeOrder(order);
  if (ground === null)
    return {
      knife: null,
      problems: [...findGapProblems(order), reportUnreached(order, leastOf(wood, face), greatestReach)],
    };

  const step = ORDINATE_STEP[order.units];
  const shape = shapeSteel(ground, steel, face, head, step);

  // Is there clearance behind the edge, what rubs, and what is in the way?
  const limiter = makeLimiter(ground, face, head.limiterGap, step) ?? makeLimiter(wood, face, head.limiterGap, step);
  const edge = clearEdge(wood, face, head);
  const walls = tightWalls(wood, face, head.wedge, rules.leastSideClearance);
  const problems = [
    ...findGapProblems(order),
    ...findRoomProblems(order, leastRadius, shape.axial, order.machines),
    ...findRubbing(order, edge, walls, rules),
    ...findLipsOf(order, chain),
    ...(limiter ? [] : [reportLimiterUnreached(order)]),
  ];
  const past = ground === whole ? (overrun ?? 0) : 0;
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
