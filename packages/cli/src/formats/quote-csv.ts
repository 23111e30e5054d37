import {
  decimalOf,
  minorDigits,
  phrase,
  type Quote,
  type QuoteWords,
  type Report,
  say as sayCore,
  type Voice,
} from '@fielded/core';
import { sayLine } from '../report/quote-items.ts';
import { sayError } from '../report/quote-lines.ts';
import { say } from '../words/say.ts';
import { csvRow } from './csv-row.ts';

/** The columns; their headings in English are a public format. */
const COLUMNS = ['item', 'quantity', 'unit', 'price', 'amount', 'currency', 'from'] as const;

/** The first row, by which a file is known to be ours. */
export function quoteHeadings(voice: Voice): string[] {
  return COLUMNS.map((column) => say(`print.quote.${column}`, {}, voice));
}

/**
 * The price of a quote as CSV (RFC 4180), a row for each line and each sum; money in the currency's own unit. Errors of the job
 * come first, what is assumed or not counted last. Numbers and columns are written as spreadsheets of the words' language read them.
 */
export function quoteCsv(quote: Quote, report: Report, errors: readonly string[], words: QuoteWords): string {
  const { price, assumed } = quote;
  const digits = minorDigits(price.currency);
  const decimal = decimalOf(words.language);
  const fixed = (key: keyof QuoteWords, figures: Readonly<Record<string, number | string>> = {}) =>
    phrase(words[key], figures, { units: report.units }, { sentences: {}, decimal });
  const money = (minor: number | null) =>
    minor === null ? '' : Number(`${minor}e-${digits}`).toFixed(digits).replace('.', decimal);
  const sum = (label: string, minor: number) => [label, '', '', '', money(minor), price.currency, ''];
  const note = (label: string, from: string) => [label, '', '', '', '', '', from];
  const rows = [
    ...(errors.length > 0 ? [note(fixed('draft'), '')] : []),
    ...errors.map((message) => note(sayError(message, report), '')),
    ...price.lines.map((line) => [
      sayLine(line, quote, report, words),
      line.quantity,
      fixed(`unit.${line.unit}`),
      line.price === null ? '' : Number(`${line.price}e-${digits}`),
      line.amount === null ? fixed(line.item === 'frame' ? 'notCounted' : 'notPriced') : money(line.amount),
      price.currency,
      line.missing === null
        ? line.from
        : say('print.quote.from.missing', { from: line.from, path: line.missing }, report),
    ]),
    sum(fixed('net'), price.net),
    sum(fixed('marginLine', { rate: price.marginRate }), price.margin),
    ...(price.tax ? [sum(fixed('tax', { tax: price.tax.name, rate: price.tax.rate }), price.tax.amount)] : []),
    sum(fixed('total'), price.total),
    ...(price.deposit === null ? [] : [sum(fixed('deposit', { rate: price.depositRate ?? 0 }), price.deposit)]),
    ...assumed.map(({ what, value }) =>
      note(fixed('assumedMeans', { assumed: fixed(`assumed.${what}`, { mm: value ?? 0, percent: value ?? 0 }) }), ''),
    ),
    ...price.notCounted.map(({ what, missing }) =>
      note(`${fixed('notCounted')}: ${sayCore(`work.${what}`, {}, report)}`, missing ?? ''),
    ),
  ];
  return [quoteHeadings(report), ...rows].map((row) => csvRow(row, decimal)).join('');
}
