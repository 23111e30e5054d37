import type { Profile } from '../profile/profile.ts';

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
