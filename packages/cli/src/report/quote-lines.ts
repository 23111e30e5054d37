import { formatMoney, phrase, QUOTE_WORDS, type Quote, quantityShown, type Report } from '@fielded/core';
import { safe } from '../io.ts';
import { left, right, setTable, wrap } from '../terminal/table.ts';
import { WIDTH } from './plain-report.ts';

/** The price of a quote as a table for the terminal; errors of the job stand before it, what is assumed under it. */
export function quoteLines(
  { kind, number, date, validUntil, price, assumed }: Quote,
  { title, units }: Report,
  errors: readonly string[],
): string {
  const money = (minor: number | null, none = 'not priced') =>
    minor === null ? none : formatMoney(minor, price.currency);
  const head = [kind === 'quote' ? 'Quotation' : 'Estimate', number ?? ''].filter(Boolean).join(' ');
  const sums: [string, number][] = [
    ['Sum', price.net],
    [`Margin, ${price.marginRate} %`, price.margin],
    ...(price.tax ? [[`${price.tax.name}, ${price.tax.rate} %`, price.tax.amount] as [string, number]] : []),
    ['Total', price.total],
    ...(price.deposit === null ? [] : [[`With the order, ${price.depositRate} %`, price.deposit] as [string, number]]),
  ];
  const draft = errors.length === 0 ? [] : [QUOTE_WORDS.draft, ...errors.map((message) => `Error: ${message}`), ''];
  const english = { sentences: {}, decimal: '.' } as const;
  const rests = assumed.map(({ what, value }) =>
    phrase(QUOTE_WORDS[`assumed.${what}`], { mm: value ?? 0, percent: value ?? 0 }, { units }, english),
  );
  return [
    ...wrap(safe(`${head}: ${title}`), WIDTH, 0),
    `${date}, valid until ${validUntil}`,
    '',
    ...draft.flatMap((words) => wrap(safe(words), WIDTH, 0)),
    ...setTable(
      [left('item'), right('quantity'), left('unit'), right('amount')],
      [
        ...price.lines.map((line) => [
          safe(line.what),
          String(quantityShown(line)),
          line.unit,
          money(line.amount, line.item === 'frame' ? 'not counted' : undefined),
        ]),
        ...sums.map(([label, minor]) => [safe(label), '', '', money(minor)]),
      ],
    ),
    ...(rests.length > 0 ? wrap(`Assumed, to be confirmed: ${rests.join(', ')}.`, WIDTH, 0) : []),
    '',
  ].join('\n');
}
