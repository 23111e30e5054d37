/** What a line of a quote is for. */
export type QuoteItem = 'wood' | 'set-ups' | 'running' | 'doors' | 'finish' | 'knives';

/** One line of a quote's price. Money in whole minor units of the currency; null where the shop has no rate for it. */
export interface QuoteLine {
  readonly item: QuoteItem;
  /** In English, such as 'black cherry, 20 mm'. */
  readonly what: string;
  readonly quantity: number;
  readonly unit: 'm³' | 'h' | 'm²' | 'each';
  /** For one of the unit; not rounded, since a rate may be finer than the smallest coin. */
  readonly price: number | null;
  readonly amount: number | null;
  /** Where the quantity comes from. */
  readonly from: string;
  /** The rate that is missing, as its path in the shop file; null where none is. */
  readonly missing: string | null;
}

/** A price put together from a job's own quantities and the shop's rates. Money in whole minor units. */
export interface QuotePrice {
  readonly currency: string;
  readonly lines: readonly QuoteLine[];
  /** Sum of the lines that have an amount. */
  readonly net: number;
  readonly margin: number;
  readonly tax: { readonly name: string; readonly rate: number; readonly amount: number } | null;
  readonly total: number;
  /** Asked for with the order; null where the shop asks for none. */
  readonly deposit: number | null;
  /** Paths of rates that are missing: the total is without what they would add. */
  readonly notPriced: readonly string[];
}

/** What a quote counts: all of a job, quantities of doors counted. */
export interface QuoteQuantities {
  /** Timber to order, m³, by wood and by finished thickness in mm; `wood` '' where the job names none. */
  readonly timber: readonly { readonly wood: string; readonly thickness: number; readonly order: number }[];
  readonly setUps: number;
  /** Edge run by the cuts, metres. */
  readonly metres: number;
  readonly doors: number;
  /** Both faces of every door, m². */
  readonly face: number;
  /** Knives to be ground, by the names of their cuts. */
  readonly knives: readonly string[];
}
