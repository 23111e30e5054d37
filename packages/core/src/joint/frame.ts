import type { Profile } from '../profile/profile.ts';

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

/** Clearances, mm, that part the verdicts. */
export interface FitLimits {
  readonly target: number;
  readonly snug: number;
  readonly loose: number;
}
