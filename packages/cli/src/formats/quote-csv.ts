import { minorDigits, type Quote, type QuoteWords } from '@fielded/core';
import { csvRow } from './csv-row.ts';

/** The first row, by which a file is known to be ours. */
export const QUOTE_HEADINGS = 'item,quantity,unit,price,amount,currency,from';

/**
 * The price of a quote as CSV (RFC 4180), a row for each line and each sum; money in the currency's own unit. Texts that a
 * spreadsheet would take for a formula start with an apostrophe.
 */
export function quoteCsv({ price }: Quote, words: QuoteWords): string {
  const digits = minorDigits(price.currency);
  const money = (minor: number | null) => (minor === null ? '' : Number(`${minor}e-${digits}`).toFixed(digits));
  const sum = (label: string, minor: number) => [label, '', '', '', money(minor), price.currency, ''];
  const rows = [
    ...price.lines.map(({ what, quantity, unit, price: each, amount, from, missing }) => [
      what,
      String(quantity),
      unit,
      each === null ? '' : String(Number(`${each}e-${digits}`)),
      amount === null ? words.notPriced : money(amount),
      price.currency,
      missing === null ? from : `${from}; missing: ${missing}`,
    ]),
    sum(words.net, price.net),
    sum(words.marginLine.replace(/\{rate:number\}/, String(price.marginRate)), price.margin),
    ...(price.tax ? [sum(`${price.tax.name}, ${price.tax.rate} %`, price.tax.amount)] : []),
    sum(words.total, price.total),
    ...(price.deposit === null
      ? []
      : [sum(words.deposit.replace(/\{rate:number\}/, String(price.depositRate)), price.deposit)]),
  ];
  return `${QUOTE_HEADINGS}\r\n${rows.map(csvRow).join('')}`;
}
