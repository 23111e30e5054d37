/** What a shop asks for its work: prices in major units of the currency, each left out where the shop has not set it. */
export interface Rates {
  /** ISO 4217 code, such as EUR; nothing can be priced without it. */
  readonly currency?: string;
  /** Price of an hour. */
  readonly hour?: number;
  /** Price of a cubic metre ordered, by the wood's name. */
  readonly wood: Readonly<Record<string, number>>;
  /** Hours for each set-up. */
  readonly setUp?: number;
  /** Metres of edge run in an hour. */
  readonly metresPerHour?: number;
  /** Hours for each door: fitting the frame, glue-up, cleaning off. */
  readonly door?: number;
  /** Price of a square metre of finished face; both faces of a door count. */
  readonly finish?: number;
  /** Price of each new knife, ground. */
  readonly knife?: number;
  /** Added to the net sum, %. */
  readonly margin: number;
  readonly tax?: Tax;
  /** How long a quote holds, days from its date. */
  readonly validDays: number;
  /** Asked for with the order, % of the total. */
  readonly deposit?: number;
  /** The shop's own terms, a paragraph each. */
  readonly terms: readonly string[];
}

/** Rates in a currency that is known. */
export type PricedRates = Rates & { readonly currency: string };

/** A tax as the shop names it, in % of net and margin. */
interface Tax {
  readonly name: string;
  readonly rate: number;
}

/** Who makes the doors, as a quote names them. `logo` is a picture file beside the shop file. */
export interface Maker {
  readonly name: string;
  readonly address: readonly string[];
  readonly logo?: string;
}
