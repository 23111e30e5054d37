import type { Chain } from '../geometry/curve.ts';

/** The named shapes and the free outline. */
export type ShapeName = 'rebate' | 'bevel' | 'cove' | 'ovolo' | 'ogee' | 'outline';

/** A profile as given: where it starts and ends, in mm. `land` is the flat at full depth from the edge, `shoulder` the upright step at the field. */
export interface NamedProfile {
  readonly shape: Exclude<ShapeName, 'outline'>;
  readonly reach: number;
  readonly depth: number;
  readonly land: number;
  readonly shoulder: number;
  /** Where an ogee turns from hollow to round, 0 to 1 along its run; 0.5 for every other shape. */
  readonly balance: number;
}

/** A free outline in cut coordinates (x = in from the edge, y = down from the worked face), from the edge to the face. */
export interface OutlineProfile {
  readonly shape: 'outline';
  readonly reach: number;
  readonly depth: number;
  readonly chain: Chain;
}

export type Profile = NamedProfile | OutlineProfile;

/** A cut with its set-up, everything filled in. Lengths mm, `tilt` in radians: 0 flat on the table, π/2 on edge. */
export interface Cut {
  readonly name: string;
  readonly side: 'front' | 'back';
  readonly profile: Profile;
  readonly depth: number;
  readonly reach: number;
  readonly run: 'under' | 'over';
  readonly tilt: number;
  readonly head?: string;
  readonly knife?: string;
}

export interface Groove {
  readonly width: number;
  readonly depth: number;
  readonly setback: number;
}

export interface Frame {
  readonly thickness: number;
  readonly groove: Groove;
  readonly swellGap: number;
  /** Profile worked on the front lip's arris: reach in from the sight edge, depth below the front face. */
  readonly sticking?: Profile;
}

export interface Panel {
  /** Planed thickness: what the cutters are set for. */
  readonly thickness: number;
  /** What the calliper says: what the section is computed on. */
  readonly measured: number;
  readonly species?: string;
  readonly sawn: 'flat' | 'quarter';
  readonly width?: number;
}

/** Clearances, mm, that part the verdicts. */
export interface FitLimits {
  readonly target: number;
  readonly snug: number;
  readonly loose: number;
}

/** ± on each source, mm. */
export interface SpreadLimits {
  readonly thickness: number;
  readonly height: number;
  readonly fence: number;
  readonly grooveWidth: number;
  readonly film: number;
}

/** Moisture content in %, or the air it settles in: °C and % relative humidity. */
export type Moisture = number | { readonly temperature: number; readonly humidity: number };

export interface Season {
  readonly made: Moisture;
  readonly driest: Moisture;
  readonly dampest: Moisture;
  readonly pinned: boolean;
}

export interface Door {
  readonly name: string;
  readonly quantity: number;
  readonly width: number;
  readonly height: number;
  readonly stile: number;
  readonly rail: number;
  readonly across: number;
  readonly up: number;
  readonly muntin: number;
}

/** A job as the engine wants it: millimetres, radians, complete. */
export interface Job {
  readonly title: string;
  /** The file's own unit: how lengths are shown, never how they are held. */
  readonly units: 'mm' | 'in';
  readonly panel: Panel;
  readonly frame: Frame;
  readonly cuts: readonly Cut[];
  readonly fit: FitLimits;
  readonly spread?: SpreadLimits;
  readonly season?: Season;
  readonly doors: readonly Door[];
  readonly shop?: Shop;
}

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
}

export interface Shop {
  readonly units: 'mm' | 'in';
  readonly knives: Readonly<Record<string, ShopKnife>>;
  readonly heads: Readonly<Record<string, Head>>;
  readonly machines: Readonly<Record<string, Machine>>;
  readonly rules: Rules;
}
