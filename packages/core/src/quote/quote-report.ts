import type { Maker } from '../shop/rates.ts';

/** What a line of a quote is for. */
export type QuoteItem = 'wood' | 'set-ups' | 'running' | 'doors' | 'finish' | 'knives' | 'frame';

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
  /** Where the quantity comes from: places in the report or in the plan, and what they are multiplied by. */
  readonly from: string;
  /**
   * The rate that is missing or far too large, as its path in the shop file; for what nobody could count its path in the job file;
   * null where none is.
   */
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
  /** Work on the frame that is in no quantity, by name: what it would take and where the job would have to say it. */
  readonly notCounted: readonly NotCounted[];
}

/** Work on the frame that nobody could count. */
export interface NotCounted {
  readonly what: FrameWork;
  /** Path in the job file of what would let it be counted; null where the job has no such key. */
  readonly missing: string | null;
}

/** What is worked on a frame: `joint` are the ends of its rails where no cope is drawn, tenons or mitres. */
export type FrameWork = 'sticking' | 'cope' | 'back edge' | 'groove' | 'joint';

/** A quote holds; an estimate may change. */
export type QuoteKind = 'quote' | 'estimate';

/** A sentence that the document makes about the finished doors, with the figures it is filled with (mm, %). */
export interface QuotePromise {
  readonly sentence:
    | 'freeToMove'
    | 'movesWhole'
    | 'face'
    | 'faceSpread'
    | 'fits'
    | 'fitsNominal'
    | 'moisture'
    | 'finishBefore';
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
  /** The frames' wood where it is another; null where it is the panels'. */
  readonly frameWood: string | null;
  readonly price: QuotePrice;
  readonly promises: readonly QuotePromise[];
  /** Figures behind the quantities that neither job nor shop gives. */
  readonly assumed: readonly QuoteAssumption[];
  /** What could not be promised, since the job does not say enough: each names the key that is missing. */
  readonly notPromised: readonly string[];
  readonly terms: readonly string[];
}

/** A figure behind a quantity that nobody gave, so that its default was taken: mm, or % for the yield. */
export interface QuoteAssumption {
  readonly what: AssumedFigure;
  readonly value: number | null;
}

export type AssumedFigure =
  | 'overLength'
  | 'overWidth'
  | 'yield'
  | 'kerf'
  | 'edgeAllowance'
  | 'leastEndGrainWidth'
  | 'greatestBlankWidth'
  | 'gap'
  | 'between'
  | 'coped'
  | 'frameWood';

/** What a quote counts: all of a job, quantities of doors counted. */
export interface QuoteQuantities {
  /** Timber to order, m³, by wood and by finished thickness in mm; `wood` '' where the job names none. */
  readonly timber: readonly { readonly wood: string; readonly thickness: number; readonly order: number }[];
  /** null where no plan says how many. */
  readonly setUps: number | null;
  /** Edge run by the cuts on the panels, and by the frame's own cuts that the plan sets up, metres. */
  readonly metres: number;
  readonly doors: number;
  /** Both faces of every door, m². */
  readonly face: number;
  /** Knives to be ground, by the names of their cuts. */
  readonly knives: readonly string[];
  /** Work on the frame that no quantity holds; left out where nobody looked. */
  readonly notCounted?: readonly NotCounted[];
}
