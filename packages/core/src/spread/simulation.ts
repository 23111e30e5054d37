/** How a source varies within its ±: normally with the ± three deviations out, or evenly up to the ±. */
export type Distribution = 'normal' | 'uniform';

export interface SimulationOptions {
  /** How many joints; a whole number above 0. */
  readonly count: number;
  readonly seed: number;
  readonly distribution: Distribution;
}

/** One figure over simulated joints, mm. */
export interface SimulatedFigure {
  /** How many joints it is taken over. */
  readonly count: number;
  readonly mean: number;
  readonly deviation: number;
  /** What this part of the joints does not exceed. */
  readonly quantiles: Readonly<Record<'0.00135' | '0.025' | '0.5' | '0.975' | '0.99865', number>>;
}

/** How many of something, in steps of `step` from `from`, mm. */
export interface Histogram {
  readonly from: number;
  readonly step: number;
  readonly counts: readonly number[];
}

/** The clearance of simulated joints. Their count is fewer than asked for when the run was stopped. */
export interface Simulation extends SimulatedFigure {
  readonly seed: number;
  readonly distribution: Distribution;
  /** Joints by verdict, as parts of them all. */
  readonly shares: Readonly<Record<'will-not-enter' | 'stops-short' | 'tight' | 'sliding' | 'loose', number>>;
  /** The part of all joints whose panel reaches the bottom of the groove, whatever their clearance: the frame then does not close. */
  readonly bottomsOut: number;
  readonly histogram: Histogram;
}

/** All that simulated joints tell. */
export interface SimulatedSpread {
  readonly clearance: Simulation;
  /** Front face against the frame's over the joints that go together, pressed back and pressed forward; null where none does. */
  readonly frontFace: { readonly least: SimulatedFigure | null; readonly most: SimulatedFigure | null };
}
