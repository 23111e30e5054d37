import { formatMoney, formatPrice, type Quote, type QuoteLine, quantityShown } from '@fielded/core';
import type { Block } from '../document/document.ts';
import type { Say } from './quote-told.ts';
import { quiet } from './quote-told.ts';

/** The table of a quote's prices, with what is not priced and what is assumed. */
export function priceBlocks({ price, assumed }: Quote, say: Say, language: string): Block[] {
  const money = (minor: number | null) =>
    minor === null ? say('notPriced') : formatMoney(minor, price.currency, language);
  const rows = price.lines.map((line) => [
    itemWords(line, say),
    quantityOf(line, language),
    say(`unit.${line.unit}`),
    line.price === null ? '' : formatPrice(line.price, price.currency, language),
    line.item === 'frame' ? say('notCounted') : money(line.amount),
  ]);
  const sum = (label: string, minor: number) => [label, '', '', '', money(minor)];
  const foot = [
    sum(say('net'), price.net),
    ...(price.margin > 0 ? [sum(say('marginLine', { rate: price.marginRate }), price.margin)] : []),
    ...(price.tax ? [sum(say('tax', { tax: price.tax.name, rate: price.tax.rate }), price.tax.amount)] : []),
    sum(say('total'), price.total),
    ...(price.deposit === null ? [] : [sum(say('deposit', { rate: price.depositRate ?? 0 }), price.deposit)]),
  ];
  return [
    { kind: 'heading', text: say('price'), whole: true },
    {
      kind: 'table',
      about: say('price'),
      head: [say('item'), say('quantity'), say('unit'), say('unitPrice'), say('amount')],
      rows,
      foot,
      total: foot.length - (price.deposit === null ? 1 : 2),
      shares: [44, 13, 10, 16, 17],
      align: ['start', 'end', 'start', 'end', 'end'],
    },
    ...(price.lines.some(({ amount }) => amount === null) ? [quiet(say('notPricedMeans'))] : []),
    ...(assumed.length > 0 ? [quiet(assumedWords(assumed, say))] : []),
  ];
}

/** The figures that quantities rest on and that are assumed, in a sentence. */
function assumedWords(assumed: Quote['assumed'], say: Say): string {
  const words = assumed.map(({ what, value }) => say(`assumed.${what}`, { mm: value ?? 0, percent: value ?? 0 }));
  return say('assumedMeans', { assumed: words.join(', ') });
}

function itemWords({ item, figures }: QuoteLine, say: Say): string {
  const key = item === 'wood' && figures.wood === '' ? 'item.timber' : (`item.${item}` as const);
  return say(key, figures);
}

function quantityOf(line: QuoteLine, language: string): string {
  return new Intl.NumberFormat(language, { maximumFractionDigits: 6 }).format(quantityShown(line));
}
