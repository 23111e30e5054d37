import type { Machine } from '../shop/shop.ts';

/** The bearing that belongs to a cut, and the nearest one there is. Diameters mm. */
interface BearingGuide {
  /** 2(R − ρ): on it the panel's own edge, or a template like it, gives the reach. */
  readonly needed: number;
  /** null where the machine's bearings are not known, or none is smaller than the cutting circle. */
  readonly available: number | null;
  /** How far a template's edge lies outside the panel's for the one available, mm; 0 where it runs on the panel itself. */
  readonly outside: number | null;
}

/** A ring fence round the cutter, set off from the axis so that it gives the reach at its mark. Lengths mm, angles degrees. */
interface RingGuide {
  readonly diameter: number;
  /** From the spindle's axis back to the ring's centre, e = R_g + ρ − R. */
  readonly setOff: number;
  /** How much less than the reach is cut where the work touches the ring beside its mark. */
  readonly short: readonly { readonly angle: number; readonly short: number }[];
  /** How far from the mark, as an angle and along the ring, the cut is `short` less; null for a ring about the axis. */
  readonly within: { readonly short: number; readonly angle: number; readonly along: number } | null;
}

/** What a curved edge can be run on for a cut. */
export interface Guide {
  readonly bearing: BearingGuide;
  readonly ring: RingGuide | null;
}

/** What a machine offers to guide the work along, for one cut. */
export interface MachineGuide extends Guide {
  readonly cut: string;
  readonly machine: string;
}

/** Bearings that differ by less, mm, are the same. */
const SAME = 0.01;
/** Degrees beside its mark at which a ring's shortfall is told. */
const ANGLES = [5, 10, 20];
/** A shortfall, mm, that sanding takes up. */
const LITTLE = 0.1;

/**
 * Chooses what a curved edge runs on: the bearing nearest to the cut's own (formula A7) and the smallest ring fence that reaches
 * round the cutter and into the tightest hollow of the panel's edge (formula A8), `hollow` its radius, mm, null where it has none.
 *
 * @example chooseGuide({ cuttingRadius: 80, reach: 38 }, null, { bearings: [70] }).bearing // needed 84, available 70, outside 7
 */
export function chooseGuide(
  { cuttingRadius, reach }: { readonly cuttingRadius: number; readonly reach: number },
  hollow: number | null,
  { bearings = [], ringFences = [] }: Pick<Machine, 'bearings' | 'ringFences'>,
): Guide {
  const own = cuttingRadius - reach;
  const off = (diameter: number) => Math.abs(diameter / 2 - own);
  // A bearing as large as the cutting circle keeps the knives off the wood.
  const [available = null] = bearings
    .filter((diameter) => diameter / 2 < cuttingRadius)
    .sort((one, other) => off(one) - off(other) || one - other);
  const [ring] = ringFences
    .filter((diameter) => diameter / 2 >= own && (hollow === null || diameter / 2 <= hollow))
    .sort((one, other) => one - other);
  const outside = available === null ? null : off(available) < SAME ? 0 : templateOffset(own, available / 2);
  return {
    bearing: { needed: 2 * own, available, outside },
    ring: ring === undefined ? null : setRing(ring, cuttingRadius, reach),
  };
}

function setRing(diameter: number, cutter: number, reach: number): RingGuide {
  const radius = diameter / 2;
  const setOff = radius + reach - cutter;
  const short = ANGLES.map((angle) => ({
    angle,
    short: ringShortfall(radius, cutter, reach, (angle * Math.PI) / 180),
  }));
  if (setOff <= LITTLE / 2) return { diameter, setOff, short, within: null };
  const turn = Math.acos(1 - LITTLE / setOff);
  return { diameter, setOff, short, within: { short: LITTLE, angle: (turn * 180) / Math.PI, along: radius * turn } };
}

/**
 * How far a template's edge lies outside the panel's for a bearing of radius `bearing` on a cut whose own is `own` = R − ρ
 * (formula A7): own − bearing, mm; negative inside.
 */
export function templateOffset(own: number, bearing: number): number {
  return own - bearing;
}

/**
 * How far a cut falls short of its reach away from the mark of a ring fence (formula A8): e(1 − cos θ), e = R_g + ρ − R, mm.
 * `ring` and `cutter` are radii, `angle` in radians.
 *
 * @example ringShortfall(90, 80, 38, Math.PI / 18) // 0.729
 */
export function ringShortfall(ring: number, cutter: number, reach: number, angle: number): number {
  return (ring + reach - cutter) * (1 - Math.cos(angle));
}
