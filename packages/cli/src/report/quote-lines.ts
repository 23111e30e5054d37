import {
  decimalOf,
  formatMoney,
  phrase,
  type Quote,
  type QuoteLine,
  type QuoteWords,
  quantityShown,
  type Report,
} from '@fielded/core';
import { safe } from '../io.ts';
import { SHEET_WIDTH } from '../terminal/columns.ts';
import { left, right, setTable, wrap } from '../terminal/table.ts';
import { say, sayAll } from '../words/say.ts';
import { type Shown, sayFigure } from './figures.ts';
import { sayLine } from './quote-items.ts';

/**
 * The price of a quote as a table for the terminal; errors of the job stand before it, what is assumed under it. What the client reads
 * too is said in the quote's fixed words.
 */
export function quoteLines(quote: Quote, report: Report, errors: readonly string[], words: QuoteWords): string {
  const { date, validUntil, price, assumed } = quote;
  const locale = localeOf(words, report);
  const money = (minor: number) => formatMoney(minor, price.currency, locale);
  const amount = ({ amount, item }: QuoteLine) => {
    if (amount !== null) return money(amount);
    return say(item === 'frame' ? 'print.quote.not-counted' : 'print.quote.not-priced', {}, report);
  };
  const draft =
    errors.length === 0 ? [] : [safe(words.draft), ...errors.map((message) => sayError(message, report)), ''];
  const fixed = { sentences: {}, decimal: decimalOf(words.language) } as const;
  const rests = assumed.map(({ what, value }) =>
    phrase(words[`assumed.${what}`], { mm: value ?? 0, percent: value ?? 0 }, { units: report.units }, fixed),
  );
  const columns = [
    left(say('print.quote.item', {}, report)),
    right(say('print.quote.quantity', {}, report)),
    left(say('print.quote.unit', {}, report)),
    right(say('print.quote.amount', {}, report)),
  ];
  const assumedWords = say('print.quote.assumed', { figures: sayAll(rests, 'print.quote.and', report) }, report);
  return [
    ...wrap(headWords(quote, report), SHEET_WIDTH, 0),
    say('print.quote.date', { date, until: validUntil }, report),
    '',
    ...draft.flatMap((line) => wrap(line, SHEET_WIDTH, 0)),
    ...setTable(columns, [
      ...price.lines.map((line) => [
        safe(sayLine(line, quote, report, words)),
        sayFigure(String(quantityShown(line)), report.language),
        safe(words[`unit.${line.unit}`]),
        amount(line),
      ]),
      ...sumRows(quote, report).map(([label, minor]) => [label, '', '', money(minor)]),
    ]),
    ...(rests.length > 0 ? wrap(assumedWords, SHEET_WIDTH, 0) : []),
    '',
  ].join('\n');
}

/** An error of the job, as it stands before a price that must not be sent. */
export function sayError(message: string, voice: Shown): string {
  return say('print.quote.error', { message }, voice);
}

function headWords({ kind, number }: Quote, { title, ...voice }: Report): string {
  const key = kind === 'quote' ? 'print.quote.head' : 'print.quote.head.estimate';
  return number === null ? say(key, { title }, voice) : say(`${key}.number` as const, { number, title }, voice);
}

/** What stands under the lines, in order. */
function sumRows({ price }: Quote, voice: Shown): [label: string, minor: number][] {
  const rate = (percent: number) => ({ rate: sayFigure(String(percent), voice.language) });
  const { tax, deposit, depositRate } = price;
  return [
    [say('print.quote.sum', {}, voice), price.net],
    [say('print.quote.margin', rate(price.marginRate), voice), price.margin],
    ...(tax
      ? [[say('print.quote.tax', { tax: tax.name, ...rate(tax.rate) }, voice), tax.amount] as [string, number]]
      : []),
    [say('print.quote.total', {}, voice), price.total],
    ...(deposit === null
      ? []
      : [[say('print.quote.deposit', rate(depositRate ?? 0), voice), deposit] as [string, number]]),
  ];
}

/** The locale for money: that of the fixed words, or one with the language's decimal sign. */
function localeOf({ language: own }: QuoteWords, { language }: Shown): string {
  const decimal = language?.decimal ?? decimalOf(own);
  if (decimal === decimalOf(own)) return own;
  return decimal === ',' ? 'de-DE' : 'en-GB';
}
