import type { JSX } from 'preact';
import { useDesk } from '../../desk/context.ts';
import { SelectField } from '../../entry/select-field.tsx';
import { type Data, getAtKeys, isGroup } from '../../job/data.ts';
import { Fields, useNames } from './entries.tsx';
import { ShopEntryField } from './shop-entry-field.tsx';
import { KNIFE_FIELDS, NEW_KNIFE, PROFILE_FIELDS, type ShopField } from './shop-fields.ts';

const SHAPES = ['bevel', 'cove', 'ovolo', 'ogee', 'rebate', 'outline'] as const;
const PATH: ShopField = { key: 'path', label: 'Outline as path data', kind: 'text' };
/** Sizes that only some shapes have, and which. */
const ONLY: Readonly<Record<string, readonly string[]>> = {
  land: ['bevel', 'cove', 'ovolo', 'ogee'],
  shoulder: ['bevel', 'cove', 'ovolo', 'ogee'],
  balance: ['ogee'],
};

/** What is known of a knife: its profile, the head it is kept in and what it was ground for. */
export function KnifeEntry({ name }: { name: string }): JSX.Element {
  const desk = useDesk();
  const at = ['knives', name];
  const knife = getAtKeys(desk.doc.value.shop?.data, at);
  const heads = useNames('heads');
  const shape = isGroup(knife) ? String(knife.shape ?? '') : '';
  const sizes = shape === 'outline' ? [PATH] : PROFILE_FIELDS.filter(({ key }) => ONLY[key]?.includes(shape) ?? true);
  const units = getAtKeys(desk.doc.value.shop?.data, ['units']) === 'in' ? 'in' : 'mm';
  const choose = (next: string) => {
    if (!isGroup(knife)) return;
    const { shape: _, reach, depth, land, shoulder, balance, path, ...others } = knife;
    const plain = next === 'outline' ? { shape: next, path: firstPath(units) } : { ...NEW_KNIFE[units], shape: next };
    const sized = withoutMissing({ reach, depth, ...(next !== 'rebate' && { land, shoulder }) });
    const kept = shape === 'outline' || next === 'outline' ? plain : { shape: next, ...sized };
    const bare = withoutMissing(next === 'rebate' ? { ...plain, land: undefined } : plain);
    // Sizes of the other shape may not suit this one: then begin with plain ones.
    if (desk.changeShop(at, { ...others, ...kept } as Data).length > 0)
      desk.changeShop(at, { ...others, ...bare } as Data);
  };
  return (
    <>
      <SelectField
        id={`shape-of-${name}`}
        label="Shape"
        name={`Shape, ${name}`}
        value={shape}
        options={SHAPES.map((each) => [each, each === 'outline' ? 'own outline' : each] as const)}
        choose={choose}
      />
      <Fields at={at} fields={sizes} whose={name} />
      <ShopEntryField at={at} field={{ key: 'head', label: 'Kept in the head', kind: ['', ...heads] }} whose={name} />
      <Fields at={at} fields={KNIFE_FIELDS} whose={name} />
    </>
  );
}

function withoutMissing(group: { readonly [key: string]: Data | undefined }): { readonly [key: string]: Data } {
  return Object.fromEntries(Object.entries(group).filter((entry): entry is [string, Data] => entry[1] !== undefined));
}

/** An outline to begin with, to be typed over. */
function firstPath(units: 'mm' | 'in'): string {
  return units === 'in' ? 'M 0 0.2 H 0.35 L 0.55 0.05 V 0' : 'M 0 5 H 9 L 14 1 V 0';
}
