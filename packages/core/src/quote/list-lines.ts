import { formatNumber } from '../measure/format.ts';
import type { Said } from '../problem/problem.ts';
import { told } from '../problem/say.ts';
import type { PricedRates } from '../shop/rates.ts';
import { findSpecies } from '../wood/species.ts';
import type { QuoteItem, QuoteLine, QuoteQuantities } from './quote-report.ts';

/** A line before it is priced: `price` in major units. */
export interface Counted {
  readonly item: QuoteItem;
  readonly figures: QuoteLine['figures'];
  readonly quantity: number;
  readonly unit: QuoteLine['unit'];
  readonly price: number | undefined;
  readonly from: Said;
  /** Path of the rate that gives the price. */
  readonly rate: string;
}

/** The lines that a job's quantities make, in the order of a quote, each with its rate; lines without a quantity among them. */
export function listLines(quantities: QuoteQuantities, rates: PricedRates): Counted[] {
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
