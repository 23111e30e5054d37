/** How a source varies within its ±: normally with the ± three deviations out, or evenly up to the ±. */
export type Distribution = 'normal' | 'uniform';

export interface SimulationOptions {
  /** How many joints; a whole number above 0. */
  readonly count: number;
  readonly seed: number;
  readonly distribution: Distribution;
}

/** Simulated joints, lengths mm. */
export interface Simulation {
  /** How many joints were made: fewer than asked for when it was stopped. */
  readonly count: number;
  readonly seed: number;
  readonly distribution: Distribution;
  readonly mean: number;
  readonly deviation: number;
  /** Clearance that this part of the joints does not exceed. */
  readonly quantiles: Readonly<Record<'0.00135' | '0.025' | '0.5' | '0.975' | '0.99865', number>>;
  readonly shares: Readonly<Record<'will-not-enter' | 'stops-short' | 'tight' | 'sliding' | 'loose', number>>;
  /** Joints by clearance: `counts` in steps of `step` from `from`. */
  readonly histogram: { readonly from: number; readonly step: number; readonly counts: readonly number[] };
}
