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
  /** The lean off square to the spindle that would give the shop's least; null where none would. */
  readonly draft: number | null;
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
  /** Whether the hand is taken for the usual one, since neither knife nor job says: confirm it before anything is ground. */
  readonly assumed: boolean;
  /** Steel beyond what the cut sweeps as set: past the panel's edge and past its face, mm; less than the shop's rule where the face does not get there. */
  readonly overrun: { readonly edge: number; readonly face: number };
  /** Which way it is ground to run; rotation as seen from above. */
  readonly groundFor: { readonly run: 'under' | 'over'; readonly rotation: 'clockwise' | 'counterclockwise' };
  /** Where the tip is along the spindle: its depth with the panel flat, its distance from the edge with the panel on edge. */
  readonly tipAt: number;
  /** Extent along t of what the cut sweeps as set, without overrun, and of the whole outline along s. */
  readonly length: number;
  readonly width: number;
  readonly outline: string;
  readonly pieces: number;
  /** Greatest distance from the exact outline to the fitted one, measured. */
  readonly deviation: number;
  readonly ordinates: readonly KnifeOrdinate[];
  /** The profile it leaves in the wood, drawn in the same place: what the knife would be without rake and shear. */
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
  readonly walls: readonly WallReport[];
  readonly warnings: readonly Problem[];
}

export interface LimiterReport {
  readonly outline: string;
  readonly pieces: number;
  readonly deviation: number;
  /** Its own extent along t and along s. */
  readonly length: number;
  readonly width: number;
  /** At the multiples of the knife's step that lie on it and at its two ends, from the knife's tip. */
  readonly ordinates: readonly SteelPoint[];
  /**
   * The knife beyond the limiter, measured on the radius at every station; `alongFace` the same measured on the steel. More
   * than the head's gap only where the limiter keeps clear of a wall sideways.
   */
  readonly gap: {
    readonly least: number;
    readonly most: number;
    readonly alongFace: { readonly least: number; readonly most: number };
  };
}
