import type { Head, ShopKnife } from '../shop/shop.ts';

/** What a knife is ground for: its run, and its rotation as seen from above. */
export type GroundFor = NonNullable<ShopKnife['groundFor']>;

/** How a head turns where nobody says: as seen from above, with the cutter under the work. */
export const USUAL_ROTATION = 'counterclockwise';

/**
 * The hand of a knife, k = s·r (formula K9): +1 under the stock turning counterclockwise or over it clockwise, −1 the other
 * two ways. A head that is turned over changes both its run and its rotation: its knives keep their hand.
 */
export function handOfKnife({ run, rotation }: GroundFor): 1 | -1 {
  return (run === 'under') === (rotation === 'counterclockwise') ? 1 : -1;
}

/**
 * The head as a knife of that hand sits in it. A head's shear is positive where the end that cuts deepest trails, run under the
 * stock turning counterclockwise (docs/knives.md has a drawing). A knife of the other hand has its deep end at the head's other
 * face: there the same slot leads.
 *
 * @example headForHand({ ...head, shear: 0.1 }, { run: 'over', rotation: 'counterclockwise' }).shear // -0.1
 */
export function headForHand(head: Head, groundFor: GroundFor): Head {
  return handOfKnife(groundFor) > 0 ? head : { ...head, shear: 0 - head.shear };
}
