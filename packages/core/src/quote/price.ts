import { formatNumber } from '../measure/format.ts';
import type { Rates } from '../shop/rates.ts';
import { roundMoney, toMinor } from './money.ts';
import type { QuoteLine, QuotePrice, QuoteQuantities } from './quote-report.ts';

/**
 * The price of a job's quantities at the shop's rates (formula Q2).
 *
 * Each line is quantity × price, rounded to whole minor units, halves away from nothing; net is the sum of the rounded
 * lines; margin = net·margin/100, tax = (net + margin)·rate/100, deposit = total·deposit/100, each rounded likewise. A
 * line whose rate is missing has no amount and is named in `notPriced`. Lines with no quantity are left out.
 *
 * @throws RangeError for a currency that is not three capital letters.
 */
export function priceQuantities(quantities: QuoteQuantities, rates: Rates): QuotePrice {
  const lines = listLines(quantities, rates).filter(({ quantity }) => quantity > 0);
  const net = lines.reduce((sum, { amount }) => sum + (amount ?? 0), 0);
  const margin = roundMoney((net * rates.margin) / 100);
  const tax =
    rates.tax === undefined ? null : { ...rates.tax, amount: roundMoney(((net + margin) * rates.tax.rate) / 100) };
  const total = net + margin + (tax?.amount ?? 0);
  return {
    currency: rates.currency,
    lines,
    net,
    margin,
    tax,
    total,
    deposit: rates.deposit === undefined ? null : roundMoney((total * rates.deposit) / 100),
    notPriced: [...new Set(lines.flatMap(({ missing }) => missing ?? []))],
  };
}

function listLines(quantities: QuoteQuantities, rates: Rates): QuoteLine[] {
  const { setUps, metres, doors, face, knives, timber } = quantities;
  const count = (n: number, one: string) => `${n} ${one}${n === 1 ? '' : 's'}`;
  return [
    ...timber.map((part) => woodLine(part, rates)),
    hourLine(rates, {
      item: 'set-ups',
      what: `Setting up the machine, ${count(setUps, 'set-up')}`,
      hours: rates.setUp === undefined ? null : setUps * rates.setUp,
      rate: 'setUp',
      count: setUps,
      from: 'plan.setUpCount × rates.setUp',
    }),
    hourLine(rates, {
      item: 'running',
      what: `Running the edges, ${formatNumber(metres, 1)} m`,
      hours: rates.metresPerHour === undefined ? null : metres / rates.metresPerHour,
      rate: 'metresPerHour',
      count: metres,
      from: 'edges of the panels × cuts ÷ rates.metresPerHour',
    }),
    hourLine(rates, {
      item: 'doors',
      what: `Making and gluing up, ${count(doors, 'door')}`,
      hours: rates.door === undefined ? null : doors * rates.door,
      rate: 'door',
      count: doors,
      from: 'doors × rates.door',
    }),
    unitLine(rates, 'finish', 'finish', 'Finish, both faces', face, 'm²', 'faces of the doors'),
    unitLine(rates, 'knives', 'knife', knivesPhrase(knives), knives.length, 'each', 'cuts without a knife of the shop'),
  ];
}

function knivesPhrase(knives: readonly string[]): string {
  return `Knives to be ground: ${knives.join(', ')}`;
}

/** Timber is ordered by volume; without a wood there is no price to look for. */
function woodLine({ wood, thickness, order }: QuoteQuantities['timber'][number], rates: Rates): QuoteLine {
  const price = Object.hasOwn(rates.wood, wood) ? toMinor(rates.wood[wood]!, rates.currency) : null;
  const line = { item: 'wood', quantity: order, unit: 'm³', from: 'timber.order' } as const;
  const what = `${wood === '' ? 'Timber' : wood}, ${formatNumber(thickness, 1)} mm finished`;
  return priced({ ...line, what }, price, wood === '' ? 'panel.species' : `rates.wood.${wood}`);
}

interface Hours {
  readonly item: QuoteLine['item'];
  readonly what: string;
  /** null where the rate that gives them is missing. */
  readonly hours: number | null;
  readonly rate: 'setUp' | 'metresPerHour' | 'door';
  readonly count: number;
  readonly from: string;
}

function hourLine(rates: Rates, { item, what, hours, rate, count, from }: Hours): QuoteLine {
  // Without the hours a piece the line still stands, counted by the piece, so that nobody overlooks it.
  if (hours === null)
    return { item, what, quantity: count, unit: 'each', price: null, amount: null, from, missing: `rates.${rate}` };
  const price = rates.hour === undefined ? null : toMinor(rates.hour, rates.currency);
  return priced({ item, what, quantity: hours, unit: 'h', from }, price, 'rates.hour');
}

function unitLine(
  rates: Rates,
  item: QuoteLine['item'],
  rate: 'finish' | 'knife',
  what: string,
  quantity: number,
  unit: QuoteLine['unit'],
  from: string,
): QuoteLine {
  const each = rates[rate];
  const price = each === undefined ? null : toMinor(each, rates.currency);
  return priced({ item, what, quantity, unit, from }, price, `rates.${rate}`);
}

function priced(line: Omit<QuoteLine, 'price' | 'amount' | 'missing'>, price: number | null, rate: string): QuoteLine {
  // The quantity that is shown is the one that is priced: without the last digits of binary arithmetic.
  const quantity = Number(line.quantity.toPrecision(12));
  return {
    ...line,
    quantity,
    price,
    amount: price === null ? null : roundMoney(quantity * price),
    missing: price === null ? rate : null,
  };
}
