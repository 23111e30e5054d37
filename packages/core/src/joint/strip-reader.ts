import { type Chain, liesOn, type Strip, type Thread } from '@fielded/geometry';

/** What one cut clears: everything between the face it works and `edge`, a chain in cut coordinates. */
export interface ClearedRegion {
  readonly side: 'front' | 'back';
  readonly edge: Chain;
}

/** The stock's number among the regions; the cuts follow from 1. */
export const STOCK = 0;

/** What a thread bounds in a strip; what `Boundary` says of a whole stretch. */
interface Role {
  wood: -1 | 0 | 1;
  gone: -1 | 0 | 1;
  own: -1 | 0 | 1;
  outer: boolean;
}

/**
 * Reads one strip after another: what does each thread bound? Its fields describe the strip read last. They are plain fields, since
 * the checks of private ones at every call took a tenth of a small section's time.
 */
export class StripReader {
  /** What each thread of the strip bounds, lowest first. */
  readonly roles: Role[] = [];
  /** How many layers of wood the strip has, and whether two cuts take some of the same stock in it. */
  layers = 0;
  overlapping = false;
  /** The regions that clear the stock's front face in this strip. */
  readonly throughFront: number[] = [];

  /** For each region, whether its cut works the back, and whether the reading is inside it. */
  readonly fromBack: boolean[] = [false];
  readonly inside: boolean[] = [false];

  constructor(regions: readonly ClearedRegion[]) {
    for (const { side } of regions) {
      this.fromBack.push(side === 'back');
      this.inside.push(false);
    }
  }

  read(strip: Readonly<Strip>): void {
    const { order } = strip;
    const { roles, throughFront, inside } = this;
    let covered = this.startBelow(order);
    let floor = -1;
    let roof = -1;
    let inStock = false;
    let inWood = false;
    let inGone = false;
    // Forget the strip before.
    this.layers = 0;
    this.overlapping = false;
    while (throughFront.length > 0) throughFront.pop();
    while (roles.length < order.length) roles.push({ wood: 0, gone: 0, own: 0, outer: false });
    // From the lowest thread up: what begins or ends here?
    for (let i = 0; i < order.length; i++) {
      const { of } = order[i]!;
      const role = roles[i]!;
      const isInside = !inside[of];
      inside[of] = isInside;
      if (of === STOCK) {
        inStock = isInside;
        // This is the front face. Which regions clear it?
        if (!inStock && covered > 0) for (let k = 1; k < inside.length; k++) if (inside[k]) throughFront.push(k);
      } else covered += isInside ? 1 : -1;
      const wood = inStock && covered === 0;
      const gone = inStock && covered > 0;
      // What is removed, and what the cut alone would take, change at this thread.
      role.wood = 0;
      role.outer = false;
      role.gone = step(inGone, gone);
      role.own = of === STOCK || !inStock ? 0 : isInside ? -1 : 1;
      if (covered > 1 && gone) this.overlapping = true;
      // A layer of wood starts at its floor and ends here, unless only rounding parts the two.
      if (wood && !inWood) floor = i;
      if (inWood && !wood && !liesOn(strip, floor, i)) {
        roles[floor]!.wood = -1;
        role.wood = 1;
        if (this.layers++ === 0) roles[floor]!.outer = true;
        roof = i;
      }
      inWood = wood;
      inGone = gone;
    }
    if (roof >= 0) roles[roof]!.outer = true;
  }

  /** Finds which regions the reading starts inside, below all threads, and returns their number. A cut from the back is open downwards: it is one of them if the strip has an odd number of its threads. */
  startBelow(order: readonly Thread[]): number {
    const { inside, fromBack } = this;
    for (let k = 0; k < inside.length; k++) inside[k] = false;
    let covered = 0;
    for (let i = 0; i < order.length; i++) {
      const { of } = order[i]!;
      if (!fromBack[of]) continue;
      inside[of] = !inside[of];
      covered += inside[of] ? 1 : -1;
    }
    return covered;
  }
}

/** What a thread bounds, given whether the ground below it and above it counts. */
function step(below: boolean, above: boolean): -1 | 0 | 1 {
  return below === above ? 0 : below ? 1 : -1;
}
