import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import { getAtKeys, isGroup } from '../../job/data.ts';
import { adoptStyles } from '../../style/adopt-styles.ts';
import quoteStyles from '../../style/quote.css?inline';
import { LogoField } from './logo-field.tsx';
import { ShopEntryField } from './shop-entry-field.tsx';
import { MAKER_FIELDS, RATE_FIELDS, TERMS_FIELD } from './shop-fields.ts';

adoptStyles(quoteStyles);

/** What the shop asks for its work, each wood by the cubic metre, its terms, and how a quote is headed. */
export function RateFields(): JSX.Element {
  const desk = useDesk();
  const priced = getAtKeys(desk.doc.value.shop?.data, ['rates', 'wood']);
  const { panel, frame } = desk.job.value;
  const named = [panel.species, frame.species].filter((wood) => wood !== undefined);
  const woods = [...new Set([...named, ...(isGroup(priced) ? Object.keys(priced) : [])])];
  const [currency, hour, ...others] = RATE_FIELDS;
  return (
    <>
      {[currency!, hour!].map((field) => (
        <ShopEntryField key={field.key} at={['rates']} field={field} whose="rates" />
      ))}
      {woods.map((wood) => (
        <ShopEntryField
          key={wood}
          at={['rates', 'wood']}
          field={{ key: wood, label: `${wood}, each m³ ordered`, kind: 'figure', unit: 'currency' }}
          whose="rates"
        />
      ))}
      {others.map((field) => (
        <ShopEntryField key={`${field.within} ${field.key}`} at={['rates']} field={field} whose="rates" />
      ))}
      <ShopEntryField at={['rates']} field={TERMS_FIELD} whose="rates" />
      {MAKER_FIELDS.map((field) => (
        <ShopEntryField key={field.key} at={[]} field={field} whose="head of a quote" />
      ))}
      <LogoField />
    </>
  );
}
