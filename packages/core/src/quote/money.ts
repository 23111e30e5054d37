/** Currencies that have not two decimal places, by how many they have: ISO 4217, list one (from memory). */
const OTHER_PLACES: readonly (readonly [places: number, currencies: string])[] = [
  [0, 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF'],
  [3, 'BHD IQD JOD KWD LYD OMR TND'],
  [4, 'CLF UYW'],
];

/**
 * Decimal places of a currency as ISO 4217 has them: 2 for EUR, 0 for JPY, 3 for KWD. What a runtime's Intl says differs from one to the
 * next (none for HUF in one, two in another), and a quote must come to the same sum everywhere. A code that is not assigned has 2.
 *
 * @throws RangeError for what is not three capital letters.
 */
export function minorDigits(currency: string): number {
  if (!/^[A-Z]{3}$/.test(currency)) throw new RangeError(`${currency} is not a currency code`);
  return OTHER_PLACES.find(([, currencies]) => currencies.includes(currency))?.[0] ?? 2;
}

/** A price in major units as minor units, not rounded: 12.345 EUR is 1234.5 cents. */
export function toMinor(price: number, currency: string): number {
  return shiftPoint(price, minorDigits(currency));
}

/** A number with its decimal point moved, exactly as it is written: no digit changes as it would by multiplying. */
function shiftPoint(value: number, places: number): number {
  const [digits, power = '0'] = String(value).split('e');
  return Number(`${digits}e${Number(power) + places}`);
}

/**
 * The product of decimals, over 10 to the power of `over`, in whole minor units with halves up (formula Q1): worked out in whole
 * numbers of any length, from the numbers as they are written, so that nothing is lost to binary arithmetic. None may be negative.
 *
 * @example roundProduct([1.005, 100]) // 101
 */
export function roundProduct(factors: readonly number[], over = 0): number {
  let whole = 1n;
  let places = over;
  for (const factor of factors) {
    const [digits = '', power = '0'] = String(factor).split('e');
    const [before = '', after = ''] = digits.split('.');
    whole *= BigInt(before + after);
    places += after.length - Number(power);
  }
  if (places <= 0) return Number(whole * 10n ** BigInt(-places));
  const scale = 10n ** BigInt(places);
  return Number((2n * whole + scale) / (2n * scale));
}

/** An amount in minor units for a person to read: 'EUR 1,234.50' or '1.234,50 €', as the locale has it. */
export function formatMoney(minor: number, currency: string, locale = 'en-GB'): string {
  return formatCurrency(minor, currency, locale, 0);
}

/** The price of a unit, in minor units, with as many decimals as it has: a rate may be finer than the smallest coin. */
export function formatPrice(minor: number, currency: string, locale = 'en-GB'): string {
  return formatCurrency(minor, currency, locale, 4);
}

/** With up to `finer` decimals more than the currency has. */
function formatCurrency(minor: number, currency: string, locale: string, finer: number): string {
  const digits = minorDigits(currency);
  return new Intl.NumberFormat(locale, {
    style: 'currency',
    currency,
    minimumFractionDigits: digits,
    maximumFractionDigits: digits + finer,
  }).format(shiftPoint(minor, -digits));
}

/** The decimal sign of a language, by its BCP 47 tag. @example decimalOf('de-DE') // ',' */
export function decimalOf(language: string): '.' | ',' {
  return new Intl.NumberFormat(language).format(0.5).includes(',') ? ',' : '.';
}
