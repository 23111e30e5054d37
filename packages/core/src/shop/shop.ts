import type { Profile } from '../profile/profile.ts';
import type { OwnWood } from '../wood/species.ts';
import type { Maker, Rates } from './rates.ts';

/** A knife of the shop: a profile, where it runs and what it was ground for. */
export interface ShopKnife {
  readonly profile: Profile;
  readonly head?: string;
  readonly groundFor?: { readonly run: 'under' | 'over'; readonly rotation: 'clockwise' | 'counterclockwise' };
  /** Tilt it was ground for, radians: 0 flat, π/2 on edge; left out where nobody said. */
  readonly presented?: number;
  /** How far its deepest-cutting point lies in from the head's face on that side, mm; negative where it stands out beyond. */
  readonly fromFace?: number;
  /** Relief ground on walls square to the spindle, radians. */
  readonly sideRelief?: number;
  /** Where its sample is kept. */
  readonly kept?: string;
  /** 'knife': the outline was taken off the steel; 'wood' (default): it is the section it leaves. */
  readonly measured: 'wood' | 'knife';
}

/** A cutter head. Lengths mm, angles radians, speeds rpm. */
export interface Head {
  readonly cuttingDiameter: number;
  readonly bodyDiameter: number;
  readonly height: number;
  readonly rake: number;
  readonly shear: number;
  readonly wedge: number;
  readonly knives: number;
  readonly limiterGap: number;
  readonly maxSpeed: number;
  readonly knifeThickness: number;
  readonly feed: 'hand' | 'mechanical';
  /** Diameter of its bore. */
  readonly bore?: number;
  /** Least speed marked on it. */
  readonly minSpeed?: number;
  /** Whether its knives are jointed, so that all of them leave their mark. */
  readonly jointed: boolean;
  /** The runs that its slots are marked for. */
  readonly slots?: readonly ('under' | 'over')[];
}

/** A spindle moulder. Lengths mm from the table, speeds rpm, feeds m/min, power kW, angles radians. */
export interface Machine {
  readonly speeds: readonly number[];
  readonly seat: readonly [number, number];
  readonly opening: number;
  readonly nutDiameter: number;
  readonly reversing: boolean;
  readonly feeds: readonly number[];
  /** Hole diameters its table can be closed to; the bare opening where the shop lists none. */
  readonly rings: readonly number[];
  /** Diameter of the spindle. */
  readonly spindle?: number;
  /** Usable above the seat's face, nut included. */
  readonly spindleLength?: number;
  /** Of its motor. */
  readonly power?: number;
  /** Greatest gap between the two halves of its fence. */
  readonly fenceGap?: number;
  /** Diameters of the bearings that go on its spindle, for curved work. */
  readonly bearings?: readonly number[];
  /** Outer diameters of its ring fences, for curved work. */
  readonly ringFences?: readonly number[];
  /** Whether it has a fence to hold a panel upright. */
  readonly tallFence?: boolean;
  /** Least and greatest tilt of the spindle: positive where its top leans away from the stock. */
  readonly tilt: readonly [number, number];
}

/** The shop's own bounds: lengths mm. */
export interface Rules {
  readonly leastEndGrainWidth: number;
  readonly kerf: number;
  /** Radians. */
  readonly leastSideClearance: number;
  /** Radians. */
  readonly leastClearance: number;
  /** Least and greatest, m/s. */
  readonly rimSpeed: readonly [number, number];
  readonly leastEngagement: number;
  /** Greatest pitch of the knife marks. */
  readonly knifeMark: number;
  /** Left around whatever turns, in table and fence. */
  readonly fenceClearance: number;
  /** Cleaned off each sawn edge. */
  readonly edgeAllowance: number;
  readonly greatestBlankWidth: number;
  /** Work to cut a volume of wood along the grain, N/mm². */
  readonly cuttingEnergy: number;
  /** Depth of the last of several passes. */
  readonly lastPass: number;
  /** Added to length and width of rough timber. */
  readonly overLength: number;
  readonly overWidth: number;
  /** Greatest width of a strip in a glued-up panel. */
  readonly stripWidth: number;
  /** Share of the timber ordered that ends up in the work. */
  readonly yield: number;
  /** Steel beyond edge and face. */
  readonly overrun: number;
  /** A tip thinner than this is a feather edge. */
  readonly leastTongue: number;
}

export interface Shop {
  readonly units: 'mm' | 'in';
  readonly knives: Readonly<Record<string, ShopKnife>>;
  readonly heads: Readonly<Record<string, Head>>;
  readonly machines: Readonly<Record<string, Machine>>;
  readonly rules: Rules;
  /** Rules that the file, or a shop made by hand, does not give: their defaults hold, and whatever follows from them is assumed. */
  readonly assumedRules?: readonly (keyof Rules)[];
  /** Woods with the shop's own figures, by name. */
  readonly woods?: Readonly<Record<string, OwnWood>>;
  readonly rates?: Rates;
  /** Who makes the doors, for quotes; left out where the file gives no name. */
  readonly maker?: Maker;
}

/** The head of that name; undefined where none is named, or the shop does not describe it. */
export function headNamed(shop: Pick<Shop, 'heads'> | undefined, name: string | undefined): Head | undefined {
  return shop !== undefined && name !== undefined && Object.hasOwn(shop.heads, name) ? shop.heads[name] : undefined;
}
