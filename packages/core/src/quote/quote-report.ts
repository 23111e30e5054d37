import type { Maker } from '../shop/rates.ts';

/** What a line of a quote is for. */
export type QuoteItem = 'wood' | 'set-ups' | 'running' | 'doors' | 'finish' | 'knives';

/**
 * One line of a quote's price. Money in whole minor units of the currency; null where the shop has no rate for it. A line that has
 * a price and no amount comes to more than 10¹² minor units: one of its rates is a slip.
 */
export interface QuoteLine {
  readonly item: QuoteItem;
  /** In English, such as 'black cherry, 20 mm finished'; `figures` are what stands in it, for other languages. */
  readonly what: string;
  readonly figures: Readonly<Record<string, number | string>>;
  readonly quantity: number;
  readonly unit: 'm³' | 'h' | 'm²' | 'each';
  /** For one of the unit; not rounded, since a rate may be finer than the smallest coin. */
  readonly price: number | null;
  readonly amount: number | null;
  /** Where the quantity comes from. */
  readonly from: string;
  /** The rate that is missing or far too large, as its path in the shop file; null where none is. */
  readonly missing: string | null;
}

/** A price put together from a job's own quantities and the shop's rates. Money in whole minor units. */
export interface QuotePrice {
  readonly currency: string;
  readonly lines: readonly QuoteLine[];
  /** Sum of the lines that have an amount. */
  readonly net: number;
  /** % of net, and what it comes to. */
  readonly marginRate: number;
  readonly margin: number;
  readonly tax: { readonly name: string; readonly rate: number; readonly amount: number } | null;
  readonly total: number;
  /** Asked for with the order; null where the shop asks for none. */
  readonly deposit: number | null;
  /** % of the total. */
  readonly depositRate: number | null;
  /** Paths of rates that are missing: the total is without what they would add. */
  readonly notPriced: readonly string[];
}

/** A quote holds; an estimate may change. */
export type QuoteKind = 'quote' | 'estimate';

/** A sentence that the document makes about the finished doors, with the figures it is filled with (mm, %). */
export interface QuotePromise {
  readonly sentence: 'movesWhole' | 'face' | 'faceSpread' | 'fits' | 'fitsNominal' | 'moisture' | 'finishBefore';
  readonly figures: Readonly<Record<string, number | string>>;
  /** Where its figures stand in the report. */
  readonly from: string;
}

/** A job offered to a client. Lengths mm. */
export interface Quote {
  readonly kind: QuoteKind;
  readonly number: string | null;
  /** ISO 8601. */
  readonly date: string;
  readonly validUntil: string;
  readonly client: string | null;
  readonly maker: Maker | null;
  readonly wood: string | null;
  readonly price: QuotePrice;
  readonly promises: readonly QuotePromise[];
  /** What could not be promised, since the job does not say enough: each names the key that is missing. */
  readonly notPromised: readonly string[];
  readonly terms: readonly string[];
}

/** What a quote counts: all of a job, quantities of doors counted. */
export interface QuoteQuantities {
  /** Timber to order, m³, by wood and by finished thickness in mm; `wood` '' where the job names none. */
  readonly timber: readonly { readonly wood: string; readonly thickness: number; readonly order: number }[];
  /** null where no plan says how many. */
  readonly setUps: number | null;
  /** Edge run by the cuts, metres. */
  readonly metres: number;
  readonly doors: number;
  /** Both faces of every door, m². */
  readonly face: number;
  /** Knives to be ground, by the names of their cuts. */
  readonly knives: readonly string[];
}
