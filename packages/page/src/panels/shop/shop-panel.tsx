import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import type { Desk } from '../../desk/desk.ts';
import { type Data, getAtKeys, isGroup } from '../../job/data.ts';
import { Fold } from '../../shell/fold.tsx';
import { keepShop, keptShop } from './kept-shop.ts';
import { KnifeList } from './knife-list.tsx';
import { RateFields } from './rate-fields.tsx';
import { saveShop } from './save-shop.ts';
import { ShopEntryField } from './shop-entry-field.tsx';
import { HEAD_FIELDS, MACHINE_FIELDS, NEW_HEAD, NEW_MACHINE, RULE_FIELDS, type ShopField } from './shop-fields.ts';

/** The shop: its heads, knives, machines, rules and rates; kept in the browser for every job, and as the shop file. */
export function ShopPanel(): JSX.Element {
  const desk = useDesk();
  const { shop } = desk.doc.value;
  const kept = useSignal(keptShop());
  useEffect(() => {
    if (shop !== null) keepShop(shop);
  }, [shop]);
  return (
    <section class="shop" aria-labelledby="shop-name">
      <h2 id="shop-name">Shop</h2>
      {shop === null && (
        <p class="hint">
          Heads, machines and rules that all your jobs share. With them this page can say whether a cut can be run, and
          how.
        </p>
      )}
      {shop === null && kept.value !== null && (
        <button type="button" class="main" onClick={() => desk.replace({ ...desk.doc.value, shop: kept.value })}>
          Use the shop kept in this browser
        </button>
      )}
      <Entries what="heads" one="head" fields={HEAD_FIELDS} fresh={NEW_HEAD} />
      <KnifeList />
      <Entries what="machines" one="machine" fields={MACHINE_FIELDS} fresh={NEW_MACHINE} />
      <Fold name="Rules of the shop">{() => <Fields at={['rules']} fields={RULE_FIELDS} whose="rules" />}</Fold>
      <Fold name="Rates">{() => <RateFields />}</Fold>
      {shop !== null && (
        <div class="buttons">
          <button type="button" onClick={() => saveShop(desk)}>
            Save the shop as a file
          </button>
        </div>
      )}
    </section>
  );
}

function Fields({
  at,
  fields,
  whose,
}: {
  at: readonly string[];
  fields: readonly ShopField[];
  whose: string;
}): JSX.Element {
  return (
    <>
      {fields.map((field) => (
        <ShopEntryField key={field.key} at={at} field={field} whose={whose} />
      ))}
    </>
  );
}

/** The heads, or the machines, by their names; each unfolds to what is known of it. */
function Entries({
  what,
  one,
  fields,
  fresh,
}: {
  what: 'heads' | 'machines';
  one: string;
  fields: readonly ShopField[];
  fresh: { readonly mm: Data; readonly in: Data };
}): JSX.Element {
  const desk = useDesk();
  const all = getAtKeys(desk.doc.value.shop?.data, [what]);
  const names = isGroup(all) ? Object.keys(all) : [];
  return (
    <div class="group">
      <h3>{what === 'heads' ? 'Heads' : 'Machines'}</h3>
      {names.map((name) => (
        <Fold key={name} name={name}>
          {() => (
            <>
              <NameField what={what} name={name} one={one} />
              <Fields at={[what, name]} fields={fields} whose={name} />
              <button type="button" class="quiet" onClick={() => removeEntry(desk, what, name)}>
                Remove {name}
              </button>
            </>
          )}
        </Fold>
      ))}
      <button type="button" class="quiet" onClick={() => addEntry(desk, what, one, names, fresh)}>
        Add a {one}
      </button>
      {names.length === 0 && (
        <p class="hint">Its sizes are to begin with those of a common one: type what is marked on yours.</p>
      )}
    </div>
  );
}

/** Renames an entry, everywhere it is spoken of. */
function NameField({ what, name, one }: { what: 'heads' | 'machines'; name: string; one: string }): JSX.Element {
  const desk = useDesk();
  const rename = (next: string) => {
    const all = getAtKeys(desk.doc.value.shop?.data, [what]);
    if (next === '' || next === name || !isGroup(all)) return;
    if (Object.hasOwn(all, next)) {
      desk.notice.value = { kind: 'fault', text: `There is a ${one} called ${next} already.` };
      return;
    }
    const { shop, data } = desk.doc.value;
    const renamed = Object.fromEntries(Object.entries(all).map(([key, value]) => [key === name ? next : key, value]));
    const shopData = { ...(shop!.data as object), [what]: renamed } as Data;
    desk.replace({
      ...desk.doc.value,
      data: what === 'heads' ? withHeadNamed(data, name, next, 'cuts') : data,
      shop: { ...shop!, data: what === 'heads' ? withHeadNamed(shopData, name, next, 'knives') : shopData },
    });
  };
  return (
    <div class="field">
      <label for={`name-${what}-${name}`}>Name</label>
      <div class="line wide">
        <input
          id={`name-${what}-${name}`}
          type="text"
          autocomplete="off"
          aria-label={`Name of ${name}`}
          defaultValue={name}
          onChange={(event) => rename(event.currentTarget.value.trim())}
        />
      </div>
    </div>
  );
}

/** Whatever names the head, cuts of a job or knives of a shop, with its new name. */
function withHeadNamed(data: Data, before: string, next: string, where: 'cuts' | 'knives'): Data {
  if (!isGroup(data)) return data;
  const change = (entry: Data): Data => (isGroup(entry) && entry.head === before ? { ...entry, head: next } : entry);
  const held = data[where];
  if (Array.isArray(held)) return { ...data, [where]: held.map(change) };
  if (!isGroup(held)) return data;
  return { ...data, [where]: Object.fromEntries(Object.entries(held).map(([key, value]) => [key, change(value)])) };
}

function addEntry(
  desk: Desk,
  what: string,
  one: string,
  names: readonly string[],
  fresh: { readonly mm: Data; readonly in: Data },
): void {
  const units = getAtKeys(desk.doc.value.shop?.data, ['units']) ?? desk.job.value.units;
  let name = one;
  for (let count = 2; names.includes(name); count++) name = `${one} ${count}`;
  desk.changeShop([what, name], units === 'in' ? fresh.in : fresh.mm);
}

function removeEntry(desk: Desk, what: string, name: string): void {
  const [fault] = desk.changeShop([what, name], undefined);
  desk.notice.value = fault
    ? { kind: 'fault', text: `${name} is still needed: ${fault.message}` }
    : { kind: 'note', text: `${name} is removed. Undo brings it back.` };
}
