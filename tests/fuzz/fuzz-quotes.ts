import { minorDigits, type Quote, type QuotePrice, quoteJob, type Rates, readJob } from '@fielded/core';
import { Random } from '../support/random.ts';
import type { Finding } from './fuzz-jobs.ts';
import { judgeCase, notNumbers, refusedInWords } from './judge-case.ts';
import { jobWithDoors, randomDoors } from './random-doors.ts';

/** Odd rates and odd doors: the money adds up to the smallest coin, worked out again in whole numbers. */
export function fuzzQuotes(seed: number): Finding[] {
  return judgeCase(seed, () => {
    const random = new Random(seed);
    const file = jobWithDoors(random, randomDoors(random, 3), true);
    const shop = { fielded: 1, rates: randomRates(random), ...(random.unit() < 0.3 && { name: 'A shop' }) };
    const { job, faults } = readJob(JSON.stringify(file), { loadShop: () => JSON.stringify(shop) });
    if (job === null) return refusedInWords(faults);
    const rates = job.shop!.rates!;
    if (rates.currency === undefined) return refusesCurrency(() => quoteJob(job, { date: '2026-03-14' }));
    const { made } = quoteJob(job, { date: random.oneOf(['2026-03-14', '2024-02-29', '1999-12-31']) });
    const doors = job.doors.reduce((sum, { quantity, leaves }) => sum + quantity * leaves, 0);
    return [...notNumbers(made.price, 'price'), ...moneyFaults(made.price, rates), ...lineFaults(made, rates, doors)];
  });
}

function refusesCurrency(quote: () => unknown): string[] {
  try {
    quote();
  } catch (error) {
    return error instanceof RangeError ? [] : [`threw ${error}`];
  }
  return ['a quote in no currency'];
}

/** Prices to the thousandth of a coin, halves of one, none, and the largest that a file may hold. */
function randomRates(random: Random): Record<string, unknown> {
  const perhaps = <T>(share: number, value: () => T) => (random.unit() < share ? value() : undefined);
  const figure = (most: number) => {
    const way = random.unit();
    if (way < 0.3) return Math.round(random.between(0, most));
    if (way < 0.6) return Number(random.between(0, most).toFixed(2));
    if (way < 0.8) return Number(random.between(0, most).toFixed(3)) + 0.005;
    return random.oneOf([0, 0.005, 1e-7, 1.005, 0.125, most / 3, most * 1e4, random.between(0, most)]);
  };
  return {
    currency: perhaps(0.95, () => random.oneOf(['EUR', 'USD', 'JPY', 'KWD', 'CLF', 'XXX', 'QQQ'])),
    hour: perhaps(0.9, () => figure(90)),
    wood: perhaps(0.8, () => ({
      'black cherry': figure(3000),
      'sugar maple': figure(1500),
      'eastern white pine': figure(700),
    })),
    setUp: perhaps(0.8, () => figure(2)),
    metresPerHour: perhaps(0.8, () => random.between(0.5, 200)),
    door: perhaps(0.8, () => figure(6)),
    finish: perhaps(0.8, () => figure(60)),
    knife: perhaps(0.8, () => figure(250)),
    margin: perhaps(0.7, () => figure(40)),
    tax: perhaps(0.7, () => ({ name: 'tax', rate: random.oneOf([0, 19, 8.1, 7.7, 25.5, 1000, figure(30)]) })),
    deposit: perhaps(0.6, () => Math.min(100, figure(60))),
    validDays: perhaps(0.5, () => Math.ceil(random.between(1, 3650))),
  };
}

/** What comes to more is a slip in a rate, and left out by name. */
const MOST = 10n ** 12n;

/** A decimal as a whole number of its last places. */
function decimalOf(value: number): { whole: bigint; places: number } {
  const [digits, power = '0'] = String(value).split('e') as [string, string?];
  const [before, after = ''] = digits.split('.') as [string, string?];
  const places = after.length - Number(power);
  const whole = BigInt(before + after);
  return places >= 0 ? { whole, places } : { whole: whole * 10n ** BigInt(-places), places: 0 };
}

/** The product of decimals over a power of ten, rounded half up to a whole number. */
function roundedProduct(values: readonly number[], over = 0): bigint {
  const parts = values.map(decimalOf);
  const whole = parts.reduce((product, part) => product * part.whole, 1n);
  const scale = 10n ** BigInt(parts.reduce((sum, { places }) => sum + places, over));
  return (2n * whole + scale) / (2n * scale);
}

/** Lines, sum, margin, tax, total and deposit, in whole numbers without end. */
export function moneyFaults(price: QuotePrice, rates: Pick<Rates, 'margin' | 'tax' | 'deposit'>): string[] {
  const faults: string[] = [];
  const expect = (what: string, read: number | null | undefined, wanted: bigint) => {
    if (typeof read !== 'number' || !Number.isSafeInteger(read) || BigInt(read) !== wanted)
      faults.push(`${what} is ${read}, and comes to ${wanted}`);
  };
  let net = 0n;
  for (const { item, quantity, price: each, amount, missing } of price.lines) {
    if ((amount === null) !== (missing !== null)) faults.push(`${item} is neither priced nor missing`);
    // The frame's own cuts without a head are named as not counted instead.
    if (missing !== null && item !== 'frame' && !price.notPriced.includes(missing))
      faults.push(`${item} is not named as not priced`);
    if (amount === null && each === null) continue;
    if (each === null) {
      faults.push(`${item} has an amount and no price`);
      continue;
    }
    const wanted = roundedProduct([quantity, each]);
    if (amount === null) {
      if (wanted <= MOST) faults.push(`${item} comes to ${wanted} and is left out`);
      continue;
    }
    expect(item, amount, wanted);
    net += wanted;
  }
  expect('net', price.net, net);
  const margin = roundedProduct([Number(net), rates.margin], 2);
  expect('margin', price.margin, margin);
  const tax = rates.tax === undefined ? 0n : roundedProduct([Number(net + margin), rates.tax.rate], 2);
  if (rates.tax !== undefined) expect('tax', price.tax?.amount, tax);
  expect('total', price.total, net + margin + tax);
  if (rates.deposit !== undefined)
    expect('deposit', price.deposit, roundedProduct([Number(net + margin + tax), rates.deposit], 2));
  return faults;
}

/** Prices are the shop's own, in the currency's smallest coin; every door is counted once. */
function lineFaults({ price }: Quote, rates: Rates, doors: number): string[] {
  const faults: string[] = [];
  const digits = minorDigits(price.currency);
  const given = { finish: rates.finish, knives: rates.knife } as const;
  for (const { item, price: each, unit, quantity } of price.lines) {
    const rate = item in given ? given[item as 'finish'] : unit === 'h' ? rates.hour : undefined;
    if (rate !== undefined && each !== null) {
      if (Math.abs(each / 10 ** digits - rate) > 1e-14 * rate)
        faults.push(`${item} at ${each}, the shop's rate is ${rate}`);
    }
    if (
      item === 'doors' &&
      unit === 'h' &&
      rates.door !== undefined &&
      Math.abs(quantity - doors * rates.door) > 1e-9 * quantity
    )
      faults.push(`${quantity} h for ${doors} doors`);
  }
  return faults;
}
