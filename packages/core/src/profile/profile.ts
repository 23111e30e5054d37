import type { Chain } from '@fielded/geometry';

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
