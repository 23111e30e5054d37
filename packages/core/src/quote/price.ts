import type { Units } from '../measure/length.ts';
import { ENGLISH } from '../problem/english.ts';
import type { Language, Voice } from '../problem/language.ts';
import { IN_ENGLISH } from '../problem/language.ts';
import { sayIn } from '../problem/phrase.ts';
import { phrase } from '../problem/say.ts';
import type { PricedRates } from '../shop/rates.ts';
import { type Counted, listLines } from './list-lines.ts';
import { roundProduct, toMinor } from './money.ts';
import type { QuoteItem, QuoteLine, QuotePrice, QuoteQuantities } from './quote-report.ts';
import { QUOTE_WORDS } from './quote-words.ts';

/**
 * The price of a job's quantities at the shop's rates (formula Q2).
 *
 * Each line is quantity × price, rounded to whole minor units, halves away from nothing; net is the sum of the rounded
 * lines; margin = net·margin/100, tax = (net + margin)·rate/100, deposit = total·deposit/100, each rounded likewise. A
 * line whose rate is missing, or that comes to more than 10¹² minor units, has no amount and is named in `notPriced`; the frame's own
 * cuts that nobody could count stand as a line without an amount and in `notCounted`. Lines with no quantity are left out. `units` and
 * `language` are for the words of the lines.
 *
 * @throws RangeError for a currency that is not three capital letters.
 */
export function priceQuantities(
  quantities: QuoteQuantities,
  rates: PricedRates,
  units: Units = 'mm',
  language: Language = IN_ENGLISH,
): QuotePrice {
  const lines = listLines(quantities, rates)
    .filter(({ quantity }) => quantity > 0)
    .map((line) => priceLine(line, rates, { units, language }));
  const net = lines.reduce((sum, { amount }) => sum + (amount ?? 0), 0);
  const margin = roundProduct([net, rates.margin], 2);
  const { tax: asked } = rates;
  const tax = asked === undefined ? null : { ...asked, amount: roundProduct([net + margin, asked.rate], 2) };
  const total = net + margin + (tax?.amount ?? 0);
  return {
    currency: rates.currency,
    lines,
    net,
    marginRate: rates.margin,
    margin,
    tax,
    total,
    deposit: rates.deposit === undefined ? null : roundProduct([total, rates.deposit], 2),
    depositRate: rates.deposit ?? null,
    notPriced: [...new Set(lines.flatMap(({ item, missing }) => (item === 'frame' ? [] : (missing ?? []))))],
    notCounted: quantities.notCounted ?? [],
  };
}

function priceLine(
  { item, figures, unit, from, rate, ...counted }: Counted,
  rates: PricedRates,
  voice: Voice,
): QuoteLine {
  // The quantity that is shown is the one that is priced: without the last digits of binary arithmetic.
  const quantity = Number(counted.quantity.toPrecision(12));
  const price = counted.price === undefined ? null : toMinor(counted.price, rates.currency);
  const comes = price === null ? null : roundProduct([quantity, price]);
  const amount = comes === null || comes > MOST_AMOUNT ? null : comes;
  return {
    item,
    what: lineWords(item, figures, voice.units),
    figures,
    quantity,
    unit,
    price,
    amount,
    from: sayIn(from, voice, { language: voice.language ?? IN_ENGLISH, english: ENGLISH }),
    missing: amount === null ? rate : null,
  };
}

/** What a line may come to, minor units: sums of such lines with margin and tax are still whole numbers that are told apart. */
export const MOST_AMOUNT: number = 1e12;

function lineWords(item: QuoteItem, figures: QuoteLine['figures'], units: Units): string {
  const key = item === 'wood' && figures.wood === '' ? 'item.timber' : (`item.${item}` as const);
  return phrase(QUOTE_WORDS[key], figures, { units }, { sentences: {}, decimal: '.' });
}

/** Decimals that a quantity is shown with at least, and at most. */
const FEWEST_DIGITS = 2;
const MOST_DIGITS = 6;

/** A line's quantity in the fewest decimals from which its amount can be worked out again: 0.124354 m³ at 3,900.00 is 484.98. */
export function quantityShown({ quantity, price, amount }: Pick<QuoteLine, 'quantity' | 'price' | 'amount'>): number {
  for (let digits = FEWEST_DIGITS; digits < MOST_DIGITS; digits++) {
    const shown = Number(quantity.toFixed(digits));
    if (shown > 0 && (price === null || roundProduct([shown, price]) === amount)) return shown;
  }
  return Number(quantity.toFixed(MOST_DIGITS));
}
