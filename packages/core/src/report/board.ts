import { depthPath } from '@fielded/geometry';
import { profileChain } from '../profile/chain.ts';
import type { ShapeName } from '../profile/profile.ts';
import type { Shop, ShopKnife } from '../shop/shop.ts';
import { headNamed } from '../shop/shop.ts';
import { steelFault, woodOf } from './knife-orders.ts';

/** One knife on the shop's sample board: what it leaves in the wood, with the panel flat. Lengths mm. */
export interface Sample {
  readonly name: string;
  readonly shape: ShapeName;
  readonly reach: number;
  readonly depth: number;
  /** SVG path data: x in from the edge, y down from the worked face, from the edge to the face. */
  readonly outline: string;
  readonly head: string | null;
  readonly groundFor: NonNullable<ShopKnife['groundFor']> | null;
  /** Where the sample is kept; null where the shop does not say. */
  readonly kept: string | null;
  /** Off the steel: its section is computed, not drawn. */
  readonly measured: ShopKnife['measured'];
}

/**
 * Every knife of the shop as it cuts, in the order of the file; one that was measured off the steel is left out where
 * the shop describes no head that it fits, since what it cuts is not known.
 */
export function sampleBoard(shop: Shop): Sample[] {
  return Object.entries(shop.knives).flatMap(([name, knife]) => {
    const head = headNamed(shop, knife.head);
    if (knife.measured === 'knife' && (head === undefined || steelFault(shop, name, knife, head))) return [];
    const profile = head === undefined ? knife.profile : woodOf(knife, head, knife.presented ?? 0);
    return [
      {
        name,
        shape: knife.profile.shape,
        reach: profile.reach,
        depth: profile.depth,
        outline: depthPath(profileChain(profile)),
        head: knife.head ?? null,
        groundFor: knife.groundFor ?? null,
        kept: knife.kept ?? null,
        measured: knife.measured,
      },
    ];
  });
}
