import { decimalOf, minorDigits, phrase, type Quote, type QuoteWords, type Report } from '@fielded/core';
import { csvRow } from './csv-row.ts';

/** The first row, by which a file is known to be ours. */
export const QUOTE_HEADINGS: readonly string[] = ['item', 'quantity', 'unit', 'price', 'amount', 'currency', 'from'];

/**
 * The price of a quote as CSV (RFC 4180), a row for each line and each sum; money in the currency's own unit. Errors of the job
 * come first, what is assumed or not counted last. Numbers and columns are written as spreadsheets of the words' language read them.
 */
export function quoteCsv(
  { price, assumed }: Quote,
  report: Report,
  errors: readonly string[],
  words: QuoteWords,
): string {
  const digits = minorDigits(price.currency);
  const decimal = decimalOf(words.language);
  const say = (key: keyof QuoteWords, figures: Readonly<Record<string, number | string>> = {}) =>
    phrase(words[key], figures, { units: report.units }, { sentences: {}, decimal });
  const money = (minor: number | null) =>
    minor === null ? '' : Number(`${minor}e-${digits}`).toFixed(digits).replace('.', decimal);
  const sum = (label: string, minor: number) => [label, '', '', '', money(minor), price.currency, ''];
  const note = (label: string, from: string) => [label, '', '', '', '', '', from];
  const rows = [
    ...(errors.length > 0 ? [note(say('draft'), '')] : []),
    ...errors.map((message) => note(`Error: ${message}`, '')),
    ...price.lines.map(({ item, figures, quantity, unit, price: each, amount, from, missing }) => [
      say(item === 'wood' && figures.wood === '' ? 'item.timber' : `item.${item}`, figures),
      quantity,
      say(`unit.${unit}`),
      each === null ? '' : Number(`${each}e-${digits}`),
      amount === null ? say(item === 'frame' ? 'notCounted' : 'notPriced') : money(amount),
      price.currency,
      missing === null ? from : `${from}; missing: ${missing}`,
    ]),
    sum(say('net'), price.net),
    sum(say('marginLine', { rate: price.marginRate }), price.margin),
    ...(price.tax ? [sum(say('tax', { tax: price.tax.name, rate: price.tax.rate }), price.tax.amount)] : []),
    sum(say('total'), price.total),
    ...(price.deposit === null ? [] : [sum(say('deposit', { rate: price.depositRate ?? 0 }), price.deposit)]),
    ...assumed.map(({ what, value }) =>
      note(say('assumedMeans', { assumed: say(`assumed.${what}`, { mm: value ?? 0, percent: value ?? 0 }) }), ''),
    ),
    ...price.notCounted.map(({ what, missing }) => note(`${say('notCounted')}: ${what}`, missing ?? '')),
  ];
  return [QUOTE_HEADINGS, ...rows].map((row) => csvRow(row, decimal)).join('');
}
