import { formatMoney, formatPrice, type QuoteLine, type QuotePrice, quantityShown } from '@fielded/core';
import type { JSX } from 'preact';
import { keepTogether } from '../../words/keep-together.ts';

/** The price line by line, as in the document; a line without a rate has a button that leads to where the rate is given. */
export function PriceTable({
  price,
  language,
  giveRate,
}: {
  price: QuotePrice;
  /** Money and figures are written as the document writes them. */
  language: string;
  giveRate: (missing: string) => void;
}): JSX.Element {
  const money = (minor: number) => formatMoney(minor, price.currency, language);
  return (
    <table class="price">
      <caption>Price</caption>
      <thead>
        <tr>
          <th scope="col">Item</th>
          <th scope="col">Amount</th>
        </tr>
      </thead>
      <tbody>
        {price.lines.map((line) => (
          <tr key={`${line.item} ${line.what}`}>
            <th scope="row">
              {keepTogether(line.what)}
              <small>{workOf(line, price.currency, language)}</small>
            </th>
            <td>{line.amount === null ? <NotPriced line={line} giveRate={giveRate} /> : money(line.amount)}</td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <Sum name="Sum" amount={money(price.net)} />
        {price.margin > 0 && <Sum name={`Margin, ${price.marginRate} %`} amount={money(price.margin)} />}
        {price.tax && <Sum name={`${price.tax.name}, ${price.tax.rate} %`} amount={money(price.tax.amount)} />}
        <Sum name="Total" amount={money(price.total)} strong />
        {price.deposit !== null && (
          <Sum name={`With the order, ${price.depositRate} %`} amount={money(price.deposit)} />
        )}
      </tfoot>
    </table>
  );
}

function Sum({ name, amount, strong = false }: { name: string; amount: string; strong?: boolean }): JSX.Element {
  return (
    <tr class={strong ? 'total' : ''}>
      <th scope="row">{name}</th>
      <td>{amount}</td>
    </tr>
  );
}

function NotPriced({
  line: { item, what, missing },
  giveRate,
}: {
  line: QuoteLine;
  giveRate: (missing: string) => void;
}): JSX.Element {
  return (
    <>
      {item === 'frame' ? 'not counted' : 'not priced'}
      {missing !== null && (
        <button
          type="button"
          class="quiet"
          aria-label={`Give what is missing for ${what}`}
          onClick={() => giveRate(missing)}
        >
          {wordsFor(missing)}
        </button>
      )}
    </>
  );
}

/** What the button beside a line that is not priced leads to. */
function wordsFor(missing: string): string {
  if (missing === 'machines') return 'Plan it';
  if (missing.startsWith('frame.')) return 'Name its head';
  return missing === 'panel.species' ? 'Name the wood' : 'Give its rate';
}

/** How a line's amount is worked out, beside its name. @example workOf(line, 'EUR', 'en-GB') // '0.12 m³ at €1,900.00' */
function workOf(line: QuoteLine, currency: string, language: string): string {
  const { unit, price } = line;
  const figure = new Intl.NumberFormat(language, { maximumFractionDigits: 6 }).format(quantityShown(line));
  // Pieces that nothing is asked for yet are counted in the words of the line.
  if (price === null && unit === 'each') return '';
  const count = unit === 'each' ? `${figure} off` : `${figure}\u00A0${unit}`;
  return price === null ? count : `${count} at ${formatPrice(price, currency, language)}`;
}
