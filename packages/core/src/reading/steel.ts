import { type GroundFor, handOfKnife, headForHand } from '../knife/hand.ts';
import { steelReach, woodProfile } from '../knife/wood-profile.ts';
import type { Profile } from '../profile/profile.ts';
import type { Head, ShopKnife } from '../shop/shop.ts';

/** What a knife measured off its steel cuts; null where it is longer from its tip than its head lets it be. Lengths mm. */
export interface Steel {
  readonly length: number;
  readonly most: number;
  readonly profile: Profile | null;
}

/** Reads what a knife cuts in a head, ground for a hand, and presented at `tilt`, radians. */
export type ReadSteel = (knife: ShopKnife, head: Head, groundFor: GroundFor, tilt: number) => Steel;

/** What a knife cuts, computed anew. */
export function readSteel({ profile }: ShopKnife, kept: Head, groundFor: GroundFor, tilt: number): Steel {
  const head = headForHand(kept, groundFor);
  const { length, most } = steelReach(profile, head, tilt);
  return { length, most, profile: length <= most ? woodProfile(profile, head, tilt) : null };
}

/**
 * The same, and computed once for the same knife in the same head: fitting arcs to what the steel cuts takes longer than
 * everything else of a job together. Knives and heads are compared as objects, since they are never changed in place.
 */
export function createSteelMemory(): ReadSteel {
  const known = new WeakMap<ShopKnife, WeakMap<Head, Map<string, Steel>>>();
  return (knife, head, groundFor, tilt) => {
    const heads = known.get(knife) ?? new WeakMap<Head, Map<string, Steel>>();
    const ways = heads.get(head) ?? new Map<string, Steel>();
    const way = `${handOfKnife(groundFor)} ${tilt}`;
    const steel = ways.get(way) ?? readSteel(knife, head, groundFor, tilt);
    known.set(knife, heads.set(head, ways.set(way, steel)));
    return steel;
  };
}
