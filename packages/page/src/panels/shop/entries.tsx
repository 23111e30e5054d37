import { type Signal, useSignal } from '@preact/signals';
import type { ComponentChildren, JSX, RefObject } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import type { Desk } from '../../desk/desk.ts';
import { WordField } from '../../entry/word-field.tsx';
import { type Data, getAtKeys, isGroup } from '../../job/data.ts';
import { ShopEntryField } from './shop-entry-field.tsx';
import type { ShopField } from './shop-fields.ts';

/** Groups of the shop file whose entries have names. */
export type Named = 'heads' | 'knives' | 'machines' | 'woods';

/** The fields of one thing of the shop. */
export function Fields({
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
        <ShopEntryField key={`${field.within} ${field.key}`} at={at} field={field} whose={whose} />
      ))}
    </>
  );
}

/** The names of the entries of a group. */
export function useNames(what: Named): string[] {
  const all = getAtKeys(useDesk().doc.value.shop?.data, [what]);
  return isGroup(all) ? Object.keys(all) : [];
}

/** The entries of a group by their names; each unfolds to what is known of it, and can be renamed and removed. */
export function Entries({
  what,
  one,
  title,
  fresh,
  hint,
  begun,
  picture,
  children,
}: {
  what: Named;
  one: string;
  title: string;
  fresh: Data;
  hint: string;
  /** Said in an entry for as long as it has what it was begun with. */
  begun: string;
  picture?: (name: string) => ComponentChildren;
  children: (name: string) => ComponentChildren;
}): JSX.Element {
  const desk = useDesk();
  const names = useNames(what);
  const ids = useEntryIds();
  const group = useRef<HTMLDivElement>(null);
  const added = useFocusOnAdded(group);
  const isFresh = (name: string) =>
    JSON.stringify(getAtKeys(desk.doc.value.shop?.data, [what, name])) === JSON.stringify(fresh);
  return (
    <div class="group" ref={group}>
      <h3>{title}</h3>
      {names.map((name) => (
        <Entry key={ids.of(name)} name={name} picture={picture?.(name)}>
          {() => (
            <>
              <NameField what={what} name={name} one={one} renamed={(next) => ids.rename(name, next)} />
              {isFresh(name) && <p class="hint">{begun}</p>}
              {children(name)}
              <button type="button" class="quiet" onClick={() => removeEntry(desk, what, name)}>
                Remove {name}
              </button>
            </>
          )}
        </Entry>
      ))}
      <button
        type="button"
        class="quiet"
        onClick={() => {
          addEntry(desk, what, one, names, fresh);
          added.value += 1;
        }}
      >
        Add a {one}
      </button>
      {names.length === 0 && <p class="hint">{hint}</p>}
    </div>
  );
}

/** How many entries were added: the keyboard goes on in the last. */
function useFocusOnAdded(group: RefObject<HTMLElement | null>): Signal<number> {
  const added = useSignal(0);
  useLayoutEffect(() => {
    if (added.value > 0) [...group.current!.querySelectorAll('summary')].at(-1)?.focus();
  }, [added.value]);
  return added;
}

/** What tells entries apart when they are shown: an entry that is renamed stays the one it was, unfolded and with the focus in it. */
function useEntryIds(): { of(name: string): string; rename(before: string, next: string): void } {
  const known = useRef({ ids: new Map<string, string>(), count: 0 });
  const { current } = known;
  const of = (name: string) => {
    const id = current.ids.get(name) ?? String(current.count++);
    current.ids.set(name, id);
    return id;
  };
  return {
    of,
    rename(before, next) {
      const id = of(before);
      current.ids.delete(before);
      current.ids.set(next, id);
    },
  };
}

/** One entry folded away under its name and picture. */
function Entry({
  name,
  picture,
  children,
}: {
  name: string;
  picture: ComponentChildren;
  children: () => ComponentChildren;
}): JSX.Element {
  const [opened, setOpened] = useState(false);
  return (
    <details onToggle={(event) => event.currentTarget.open && setOpened(true)}>
      <summary>
        {picture}
        {name}
      </summary>
      {opened && children()}
    </details>
  );
}

/** Renames an entry, everywhere it is spoken of. */
function NameField({
  what,
  name,
  one,
  renamed,
}: {
  what: Named;
  name: string;
  one: string;
  renamed: (next: string) => void;
}): JSX.Element {
  const desk = useDesk();
  const rename = (next: string) => {
    const all = getAtKeys(desk.doc.value.shop?.data, [what]);
    if (next === '' || next === name || !isGroup(all)) return;
    if (Object.hasOwn(all, next)) {
      desk.notice.value = { kind: 'fault', text: `There is a ${one} called ${next} already.` };
      return;
    }
    renamed(next);
    const { shop, data } = desk.doc.value;
    const entries = Object.entries(all).map(([key, value]) => [key === name ? next : key, value]);
    const shopData = { ...(shop!.data as object), [what]: Object.fromEntries(entries) } as Data;
    desk.replace({
      ...desk.doc.value,
      data: renamedIn(data, what, name, next),
      shop: { ...shop!, data: renamedIn(shopData, what, name, next) },
    });
  };
  return (
    <WordField
      id={`name-${what}-${name}`}
      label="Name"
      aria-label={`Name of ${name}`}
      defaultValue={name}
      onChange={(event) => rename(event.currentTarget.value.trim())}
    />
  );
}

/** The key under which a job or a shop speaks of an entry. */
const SPOKEN_OF: Readonly<Partial<Record<Named, string>>> = { heads: 'head', knives: 'knife', woods: 'species' };

/** Whatever names an entry, cuts and frame of a job or knives of a shop, with its new name. */
function renamedIn(data: Data, what: Named, before: string, next: string): Data {
  const key = SPOKEN_OF[what];
  if (key === undefined) return data;
  const walk = (here: Data, deep: number): Data => {
    if (Array.isArray(here)) return (here as readonly Data[]).map((each) => walk(each, deep));
    if (!isGroup(here)) return here;
    const changed = Object.entries(here).map(([inner, value]) => {
      if (inner === key && value === before) return [inner, next] as const;
      // Prices are kept by the wood's name.
      if (what === 'woods' && inner === 'rates' && isGroup(value) && isGroup(value.wood))
        return [inner, { ...value, wood: keyRenamed(value.wood, before, next) }] as const;
      return [inner, deep > 0 ? walk(value, deep - 1) : value] as const;
    });
    return Object.fromEntries(changed);
  };
  return walk(data, 3);
}

function keyRenamed(group: { readonly [key: string]: Data }, before: string, next: string): Data {
  return Object.fromEntries(Object.entries(group).map(([key, value]) => [key === before ? next : key, value]));
}

function addEntry(desk: Desk, what: Named, one: string, names: readonly string[], fresh: Data): void {
  let name = one;
  for (let count = 2; names.includes(name); count++) name = `${one} ${count}`;
  desk.changeShop([what, name], fresh);
}

function removeEntry(desk: Desk, what: Named, name: string): void {
  const [fault] = desk.changeShop([what, name], undefined);
  desk.notice.value = fault
    ? { kind: 'fault', text: `${name} is still needed: ${fault.message}` }
    : { kind: 'note', text: `${name} is removed. Undo brings it back.` };
}
