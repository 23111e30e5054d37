import type { Profile } from '../profile/profile.ts';
import type { OwnWood } from '../wood/species.ts';

export interface Groove {
  readonly width: number;
  readonly depth: number;
  readonly setback: number;
}

/** How rails meet stiles, and muntins rails: `length` goes into each side, mm. */
export interface FrameJoint {
  readonly kind: 'cope' | 'tenon' | 'mitre';
  readonly length: number;
}

export interface Frame {
  readonly thickness: number;
  readonly groove: Groove;
  /** At the groove's bottom across the grain. */
  readonly swellGap: number;
  /** The same along the grain, at the panel's ends; the swell gap where left out. */
  readonly endGap?: number;
  /** A cope as long as the groove is deep where left out. */
  readonly joint?: FrameJoint;
  /** The frame's wood and how it was sawn, where they are not the panel's. */
  readonly species?: string;
  readonly wood?: OwnWood;
  readonly sawn?: 'flat' | 'quarter';
  /** Profile worked on the front lip's arris: reach in from the sight edge, depth below the front face. */
  readonly sticking?: Profile;
  /** Head of the shop that runs the sticking. */
  readonly stickingHead?: string;
  /** Worked on the inside arris of the frame's back after glue-up. */
  readonly backEdge?: BackEdge;
}

/** A profile on the back's inside arris: reach in from the sight edge, depth below the back. */
export interface BackEdge {
  readonly profile: Profile;
  readonly head?: string;
}

/** Clearances, mm, that part the verdicts. */
export interface FitLimits {
  readonly target: number;
  readonly snug: number;
  readonly loose: number;
}

/** What stands behind the groove, mm: the lip at the frame's back. */
export function backLipOf({ thickness, groove }: Pick<Frame, 'thickness' | 'groove'>): number {
  return thickness - groove.setback - groove.width;
}

/** The gap at the panel's ends, mm. */
export function endGapOf({ endGap, swellGap }: Pick<Frame, 'endGap' | 'swellGap'>): number {
  return endGap ?? swellGap;
}

/** How the frame's parts meet. */
export function jointOf({ joint, groove }: Pick<Frame, 'joint' | 'groove'>): FrameJoint {
  return joint ?? { kind: 'cope', length: groove.depth };
}
