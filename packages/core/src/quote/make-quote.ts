import type { Job } from '../job/job.ts';
import { evaluateWithPlan } from '../report/evaluate.ts';
import type { Report } from '../report/report.ts';
import type { Rates } from '../shop/rates.ts';
import { ONE_JOINT } from '../spread/report.ts';
import { listAssumptions } from './assumptions.ts';
import { priceQuantities } from './price.ts';
import { listPromises } from './promises.ts';
import { countQuantities } from './quantities.ts';
import type { Quote, QuoteKind, QuoteQuantities } from './quote-report.ts';

/** Who a quote is for and when it is made. */
export interface QuoteOptions {
  readonly kind?: QuoteKind;
  readonly number?: string;
  /** ISO 8601, such as 2026-03-14. */
  readonly date: string;
  readonly client?: string;
}

const DAY = 86_400_000;

/**
 * The quote of a job: its quantities priced at the shop's rates, and what may be promised of the finished doors.
 *
 * @throws RangeError for a date that is not ISO 8601, and for a shop without rates in a currency.
 */
export function makeQuote(job: Job, report: Report, quantities: QuoteQuantities, options: QuoteOptions): Quote {
  const rates = job.shop?.rates;
  const currency = rates?.currency;
  if (rates === undefined || currency === undefined) throw new RangeError('the shop has no rates.currency');
  return {
    kind: options.kind ?? 'quote',
    number: options.number ?? null,
    date: options.date,
    validUntil: addDays(options.date, rates),
    client: options.client ?? null,
    maker: job.shop?.maker ?? null,
    wood: job.panel.species ?? null,
    frameWood: job.frame.species === job.panel.species ? null : (job.frame.species ?? null),
    price: priceQuantities(quantities, { ...rates, currency }, job.units, job.language),
    ...listPromises(job, report),
    assumed: listAssumptions(job, report),
    terms: rates.terms,
  };
}

/** What a quote of a job counts, and the report that it is counted from. */
export interface CountedJob {
  readonly report: Report;
  readonly quantities: QuoteQuantities;
}

/** Evaluates and plans a job, and counts what a quote prices. No quote shows shares of joints, so only one joint is simulated. */
export function countJob(job: Job): CountedJob {
  const { report, planned } = evaluateWithPlan(job, { simulation: ONE_JOINT });
  return { report, quantities: countQuantities(job, report, planned?.plan) };
}

/**
 * The quote of a job from nothing but the job: what its report and its plan count, priced.
 *
 * @throws RangeError as `makeQuote` does.
 */
export function quoteJob(job: Job, options: QuoteOptions): { readonly made: Quote; readonly report: Report } {
  const { report, quantities } = countJob(job);
  return { made: makeQuote(job, report, quantities, options), report };
}

function addDays(date: string, { validDays }: Rates): string {
  const start = /^\d{4}-\d{2}-\d{2}$/.test(date) ? Date.parse(`${date}T00:00:00Z`) : Number.NaN;
  if (Number.isNaN(start) || new Date(start).toISOString().slice(0, 10) !== date)
    throw new RangeError(`${date} is not a date such as 2026-03-14`);
  return new Date(start + validDays * DAY).toISOString().slice(0, 10);
}
