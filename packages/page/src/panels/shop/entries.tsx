import { type Signal, useSignal } from '@preact/signals';
import type { ComponentChildren, JSX, RefObject } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { WordField } from '../../entry/word-field.tsx';
import { type Data, getAtKeys, isGroup } from '../../job/data.ts';
import { addEntry, type Named, removeEntry, renameEntry } from './named-entries.ts';
import { ShopEntryField } from './shop-entry-field.tsx';
import type { ShopField } from './shop-fields.ts';

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
    <details aria-label={name} onToggle={(event) => event.currentTarget.open && setOpened(true)}>
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
    if (renameEntry(desk, what, one, name, next)) renamed(next);
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
