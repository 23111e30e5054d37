import type { Problem } from '../problem/problem.ts';
import { leastBackClearance } from './edge-clearance.ts';
import type { KnifeOrder } from './knife-order.ts';
import { findGapProblems, findRoomProblems } from './knife-problems.ts';
import { seeOrder } from './see-order.ts';
import { extentOf } from './shape-steel.ts';

/**
 * Whether a knife can be ground and run as it is ordered: whether `makeKnife` finds no error in it. Nothing is worked out but what errors
 * come from, the cheapest first: no outline, no ordinates, no limiter, which take ten times as long.
 */
export function canBeGround(order: KnifeOrder): boolean {
  if (findGapProblems(order).some(isError)) return false;
  const { head, face, wood, ground, steel, leastRadius } = seeOrder(order);
  if (ground === null) return false;
  const { axial } = extentOf(ground, steel, face);
  if (findRoomProblems(order, leastRadius, axial, order.machines).some(isError)) return false;
  return leastBackClearance(wood, face, head).least > 0;
}

function isError({ severity }: Problem): boolean {
  return severity === 'error';
}
