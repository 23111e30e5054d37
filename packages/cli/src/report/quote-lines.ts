import { formatMoney, type Quote, type Report } from '@fielded/core';
import { safe } from '../io.ts';
import { left, right, setTable, wrap } from '../terminal/table.ts';
import { WIDTH } from './plain-report.ts';

/** The price of a quote as a table for the terminal, where every quantity comes from under it. */
export function quoteLines({ kind, number, date, validUntil, price }: Quote, { title }: Report): string {
  const money = (minor: number | null) => (minor === null ? 'not priced' : formatMoney(minor, price.currency));
  const head = [kind === 'quote' ? 'Quotation' : 'Estimate', number ?? ''].filter(Boolean).join(' ');
  const sums: [string, number][] = [
    ['Sum', price.net],
    [`Margin, ${price.marginRate} %`, price.margin],
    ...(price.tax ? [[`${price.tax.name}, ${price.tax.rate} %`, price.tax.amount] as [string, number]] : []),
    ['Total', price.total],
    ...(price.deposit === null ? [] : [[`With the order, ${price.depositRate} %`, price.deposit] as [string, number]]),
  ];
  return [
    ...wrap(safe(`${head}: ${title}`), WIDTH, 0),
    `${date}, valid until ${validUntil}`,
    '',
    ...setTable(
      [left('item'), right('quantity'), left('unit'), right('amount')],
      [
        ...price.lines.map(({ what, quantity, unit, amount }) => [
          safe(what),
          String(Number(quantity.toFixed(3))),
          unit,
          money(amount),
        ]),
        ...sums.map(([label, minor]) => [safe(label), '', '', money(minor)]),
      ],
    ),
    '',
  ].join('\n');
}
