import { formatNumber } from '../measure/format.ts';
import type { Units } from '../measure/length.ts';
import { ENGLISH } from '../problem/english.ts';
import type { Language, Voice } from '../problem/language.ts';
import { IN_ENGLISH } from '../problem/language.ts';
import { sayIn } from '../problem/phrase.ts';
import type { Said } from '../problem/problem.ts';
import { phrase, told } from '../problem/say.ts';
import type { PricedRates } from '../shop/rates.ts';
import { findSpecies } from '../wood/species.ts';
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

/** A line before it is priced: `price` in major units. */
interface Counted {
  readonly item: QuoteItem;
  readonly figures: QuoteLine['figures'];
  readonly quantity: number;
  readonly unit: QuoteLine['unit'];
  readonly price: number | undefined;
  readonly from: Said;
  /** Path of the rate that gives the price. */
  readonly rate: string;
}

function listLines(quantities: QuoteQuantities, rates: PricedRates): Counted[] {
  const { setUps, metres, doors, face, knives, timber } = quantities;
  const { setUp, metresPerHour, door, finish, knife } = rates;
  return [
    ...timber.map((part, k) => countWood(part, k, rates)),
    setUps === null
      ? notPlanned()
      : countHours(rates, 'set-ups', setUps, { count: setUps }, told('from.set-ups', {}), setUp, 'rates.setUp'),
    countHours(
      rates,
      'running',
      metres,
      { count: formatNumber(metres, 1) },
      told('from.running', {}),
      metresPerHour === undefined ? undefined : 1 / metresPerHour,
      'rates.metresPerHour',
    ),
    countHours(rates, 'doors', doors, { count: doors }, told('from.doors', {}), door, 'rates.door'),
    {
      item: 'finish',
      figures: {},
      quantity: face,
      unit: 'm²',
      price: finish,
      from: told('from.finish', {}),
      rate: 'rates.finish',
    },
    {
      item: 'knives',
      figures: { names: knives.join(', ') },
      quantity: knives.length,
      unit: 'each',
      price: knife,
      from: told('from.knives', {}),
      rate: 'rates.knife',
    },
    ...countFrame(quantities),
  ];
}

/** Set-ups that nobody planned: the line stands, so that nobody overlooks it. */
function notPlanned(): Counted {
  return {
    item: 'set-ups',
    figures: { count: '?' },
    quantity: 1,
    unit: 'each',
    price: undefined,
    from: told('from.no-plan', {}),
    rate: 'machines',
  };
}

/** The frame's own cuts that the job gives and nobody could count: the line stands, so that nobody overlooks it. */
function countFrame({ notCounted = [] }: QuoteQuantities): Counted[] {
  const given = notCounted.filter(({ missing }) => missing !== null);
  return given.length === 0
    ? []
    : [
        {
          item: 'frame',
          figures: { names: given.map(({ what }) => what).join(', ') },
          quantity: given.length,
          unit: 'each',
          price: undefined,
          from: told('from.frame', {}),
          rate: given[0]!.missing!,
        },
      ];
}

/** Timber is ordered by volume; without a wood there is no price to look for. */
function countWood(
  { wood, thickness, order }: QuoteQuantities['timber'][number],
  place: number,
  rates: PricedRates,
): Counted {
  return {
    item: 'wood',
    figures: { wood, thickness },
    quantity: order,
    unit: 'm³',
    price: priceOfWood(wood, rates),
    from: told('from.wood', { place: String(place) }),
    rate: wood === '' ? 'panel.species' : `rates.wood.${wood}`,
  };
}

/** Price of a cubic metre; a wood goes by any name that the table of woods knows it by. */
function priceOfWood(wood: string, rates: PricedRates): number | undefined {
  if (Object.hasOwn(rates.wood, wood)) return rates.wood[wood];
  const named = Object.entries(rates.wood).find(([name]) => isSameWood(name, wood));
  return named?.[1];
}

function isSameWood(one: string, other: string): boolean {
  const known = findSpecies(one);
  return known === null ? one.toLowerCase() === other.toLowerCase() : known.name === findSpecies(other)?.name;
}

/** Work by the hour; without the hours for a piece the line still stands, counted by the piece, so that nobody overlooks it. */
function countHours(
  rates: PricedRates,
  item: QuoteItem,
  pieces: number,
  figures: QuoteLine['figures'],
  from: Said,
  each: number | undefined,
  rate: string,
): Counted {
  if (each === undefined) return { item, figures, quantity: pieces, unit: 'each', price: undefined, from, rate };
  const quantity = item === 'running' ? pieces / rates.metresPerHour! : pieces * each;
  return {
    item,
    figures,
    quantity,
    unit: 'h',
    price: rates.hour,
    from: told('from.hours', { from, rate }),
    rate: 'rates.hour',
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
