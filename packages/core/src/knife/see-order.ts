import type { Chain } from '@fielded/geometry';
import { profileChain } from '../profile/chain.ts';
import type { Head } from '../shop/shop.ts';
import { faceReach } from './face-reach.ts';
import { headForHand } from './hand.ts';
import { type KnifeFace, knifeFace } from './knife-face.ts';
import type { KnifeOrder } from './knife-order.ts';
import { type SeenProfile, seeFrom, seeProfile } from './seen-profile.ts';
import { setSteel } from './set-steel.ts';
import { seeSteel } from './wood-profile.ts';

/** What is wanted of a knife as its head sees it: all that its shape, its clearances and its faults are worked out from. */
export interface SeenOrder {
  /** The head as it stands for that hand, and its face. */
  readonly head: Head;
  readonly face: KnifeFace;
  /** The profile as it is drawn. */
  readonly chain: Chain;
  /** How far the steel runs on past edge and face, mm; null where it was measured. */
  readonly overrun: number | null;
  /** What lies in the wood, and all that is ground where the face gets in so far. */
  readonly wood: SeenProfile;
  readonly whole: SeenProfile;
  /** What is ground: `whole`, or `wood` where there is no room for an overrun; null where the face does not even get to the wood. */
  readonly ground: SeenProfile | null;
  /** The steel as it was measured. */
  readonly steel: SeenProfile | undefined;
  /** The greatest reach of a profile that the face still cuts, mm. */
  readonly greatestReach: number;
  /** How near the axis the panel comes, mm. */
  readonly leastRadius: number;
}

/** Sees an order from its head. */
export function seeOrder(order: KnifeOrder): SeenOrder {
  const { tilt, rules, setting } = order;
  const head = headForHand(order.head, order.groundFor);
  const face = knifeFace(head);

  // The wood's outline, and the steel's that runs on past edge and face: what was measured is all the steel there is.
  const chain = profileChain(order.profile);
  const overrun = order.steel ? null : rules.overrun;
  const set = setSteel(chain, setting, overrun);
  const whole = seeProfile(set.steel, tilt);
  const wood = seeFrom(set.wood, whole);

  // Does the face get in as far as the wood goes? If not, there is no such knife. And past the panel's edge? If not, there is no room for an overrun.
  const { reaches, greatest } = faceReach(wood, face);
  const ground = !reaches ? null : faceReach(whole, face).reaches ? whole : wood;
  const steel = reaches && order.steel ? seeSteel(order.steel, face, tilt) : undefined;
  const leastRadius = face.radius - whole.tipReach;
  return { head, face, chain, overrun, wood, whole, ground, steel, greatestReach: greatest, leastRadius };
}
