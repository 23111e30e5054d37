import type { Problem } from '../problem/problem.ts';
import type { SteelPoint } from './knife-face.ts';

/** A stretch of the profile that rubs sideways; ends in cut coordinates, mm, angles in degrees. */
export interface WallReport {
  readonly from: { readonly a: number; readonly b: number };
  readonly to: { readonly a: number; readonly b: number };
  /** A line; otherwise a stretch of a curve. */
  readonly straight: boolean;
  readonly sideClearance: number;
  readonly undercut: boolean;
  /** The draft, its lean off square to the spindle, with which it would have the shop's least side clearance; null where none would do. */
  readonly draft: number | null;
  /** Where it is on the knife. */
  readonly onSteel: { readonly from: SteelPoint; readonly to: SteelPoint };
}

/** A point of the edge with the radius it cuts at, and the rake and the clearance it has there. */
export interface KnifeOrdinate extends SteelPoint {
  readonly radius: number;
  readonly rake: number;
  readonly clearance: number;
}

/**
 * What to grind for one cut, and what will rub. Lengths mm, angles degrees.
 *
 * Outlines are SVG path data whose numbers are (s, t): s along the tip line, growing with depth, t up from it towards the
 * axis; painted as it stands in a y-down drawing it hangs head down.
 */
export interface KnifeReport {
  /** The cut it is for, or the knife's own name in a shop's list. */
  readonly cut: string;
  readonly knife: string | null;
  readonly head: string;
  readonly cuttingRadius: number;
  /** How near the axis the panel comes: the cutting radius less the reach as set. */
  readonly leastRadius: number;
  readonly rake: number;
  readonly shear: number;
  readonly wedge: number;
  readonly presented: number;
  /** Which way it is ground to run; rotation as seen from above. */
  readonly groundFor: { readonly run: 'under' | 'over'; readonly rotation: 'clockwise' | 'counterclockwise' };
  /** Whether what it is ground for was not given: then the cut's run and a counterclockwise spindle are assumed and must be confirmed. */
  readonly assumed: boolean;
  /** How many knives the head holds, and how thick their steel is. */
  readonly count: number;
  readonly thickness: number;
  /** Radius of the head's body, and its height. */
  readonly bodyRadius: number;
  readonly headHeight: number;
  /** Where the tip is along the spindle: its depth with the panel flat, its distance from the edge with the panel on edge. */
  readonly tipAt: number;
  /** From the tip line to where the panel ends, along t; the overrun lies beyond. */
  readonly length: number;
  /** Greatest extent of the outline along s, overrun included. */
  readonly width: number;
  /** How far the steel runs on past the panel's edge and past its face; 0 for an outline taken off the steel, and where its face does not get in so far. */
  readonly overrun: { readonly edge: number; readonly face: number };
  readonly outline: string;
  readonly pieces: number;
  /** Greatest distance from the exact outline to the fitted one, measured. */
  readonly deviation: number;
  /** In the order of the edge; chords between neighbours stay within 0.05 mm of it. */
  readonly ordinates: readonly KnifeOrdinate[];
  /** The profile it leaves in the wood as set, from edge to face, drawn in the same place: what the knife would be without rake and shear. */
  readonly wood: { readonly outline: string; readonly length: number; readonly width: number };
  /** null where the limiter's face does not get in to the profile's least radius. */
  readonly limiter: LimiterReport | null;
  readonly clearance: {
    readonly least: number;
    readonly at: SteelPoint;
    readonly side: { readonly least: number; readonly at: SteelPoint };
  };
  /** How far the knife's heel stays inside its own edge's circle. */
  readonly heel: { readonly least: number; readonly at: SteelPoint };
  /** Walls that stand too square to the spindle: what side relief is ground for. */
  readonly walls: readonly WallReport[];
  /** Side relief for those walls, degrees: the least it has to be, and what is ground; null where no wall needs any. */
  readonly sideRelief: { readonly least: number; readonly ground: number | null } | null;
  readonly warnings: readonly Problem[];
}

export interface LimiterReport {
  readonly outline: string;
  readonly pieces: number;
  readonly deviation: number;
  /** Greatest extent of its outline along t and along s. */
  readonly length: number;
  readonly width: number;
  /** Its own, in the order of its edge, from the knife's tip. */
  readonly ordinates: readonly SteelPoint[];
  /**
   * The knife beyond the limiter, measured on the radius at every station where its edge is not too steep; `alongFace` the same
   * measured on the steel; `side` how far the limiter keeps from steeper walls, along the spindle.
   */
  readonly gap: {
    readonly least: number;
    readonly most: number;
    readonly alongFace: { readonly least: number; readonly most: number };
    readonly side: number;
  };
}
