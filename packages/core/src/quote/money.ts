/**
 * Decimal places of a currency: 2 for EUR, 0 for JPY, 3 for KWD. ISO 4217 as the runtime's Intl has it; a code that is not
 * assigned has 2.
 *
 * @throws RangeError for what is not three capital letters.
 */
export function minorDigits(currency: string): number {
  if (!/^[A-Z]{3}$/.test(currency)) throw new RangeError(`${currency} is not a currency code`);
  return new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2;
}

/** A price in major units as minor units, not rounded: 12.345 EUR is 1234.5 cents. */
export function toMinor(price: number, currency: string): number {
  return Number(`${price}e${minorDigits(currency)}`);
}

/**
 * Rounds to whole minor units, halves away from nothing (formula Q1). The number is first read to 15 digits, so that a half
 * that binary arithmetic misses by its last digit counts as one: 1.005 × 100 is 100.5.
 *
 * @example roundMoney(1.005 * 100) // 101
 */
export function roundMoney(minor: number): number {
  const read = Number(Math.abs(minor).toPrecision(15));
  const whole = Math.floor(read + 0.5);
  return whole === 0 ? 0 : Math.sign(minor) * whole;
}

/** An amount in minor units for a person to read: 'EUR 1,234.50' or '1.234,50 €', as the locale has it. */
export function formatMoney(minor: number, currency: string, locale = 'en-GB'): string {
  const digits = minorDigits(currency);
  return new Intl.NumberFormat(locale, {
    style: 'currency',
    currency,
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  }).format(Number(`${minor}e-${digits}`));
}
