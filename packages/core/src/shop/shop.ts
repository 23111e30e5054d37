import type { Profile } from '../profile/profile.ts';
import type { Maker, Rates } from './rates.ts';

/** A knife of the shop: a profile, where it runs and what it was ground for. */
export interface ShopKnife {
  readonly profile: Profile;
  readonly head?: string;
  readonly groundFor?: { readonly run: 'under' | 'over'; readonly rotation: 'clockwise' | 'counterclockwise' };
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
}

export interface Machine {
  readonly speeds: readonly number[];
  readonly seat: readonly [number, number];
  readonly opening: number;
  readonly nutDiameter: number;
  readonly reversing: boolean;
  readonly feeds: readonly number[];
}

export interface Rules {
  readonly leastEndGrainWidth: number;
  readonly kerf: number;
  /** Radians. */
  readonly leastSideClearance: number;
  /** Radians. */
  readonly leastClearance: number;
  readonly rimSpeed: readonly [number, number];
  readonly leastEngagement: number;
  /** A tip thinner than this is a feather edge. */
  readonly leastTongue: number;
}

export interface Shop {
  readonly units: 'mm' | 'in';
  readonly knives: Readonly<Record<string, ShopKnife>>;
  readonly heads: Readonly<Record<string, Head>>;
  readonly machines: Readonly<Record<string, Machine>>;
  readonly rules: Rules;
  readonly rates?: Rates;
  /** Who makes the doors, for quotes; left out where the file gives no name. */
  readonly maker?: Maker;
}
