import type { Desk } from '../../desk/desk.ts';
import { type Data, getAtKeys, isGroup } from '../../job/data.ts';
import { freeName } from '../../job/free-name.ts';

/** Groups of the shop file whose entries have names. */
export type Named = 'heads' | 'knives' | 'machines' | 'woods';

/** Renames an entry, everywhere it is spoken of; whether it was renamed. A name that is taken is refused in words. */
export function renameEntry(desk: Desk, what: Named, one: string, name: string, next: string): boolean {
  const all = getAtKeys(desk.doc.value.shop?.data, [what]);
  if (next === '' || next === name || !isGroup(all)) return false;
  if (Object.hasOwn(all, next)) {
    desk.notice.value = { kind: 'fault', text: `There is a ${one} called ${next} already.` };
    return false;
  }
  const { shop, data } = desk.doc.value;
  const entries = Object.entries(all).map(([key, value]) => [key === name ? next : key, value]);
  const shopData = { ...(shop!.data as object), [what]: Object.fromEntries(entries) } as Data;
  desk.replace({
    ...desk.doc.value,
    data: renamedIn(data, what, name, next),
    shop: { ...shop!, data: renamedIn(shopData, what, name, next) },
  });
  return true;
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

/** Adds an entry that is called what it is, or that and a number. */
export function addEntry(desk: Desk, what: Named, one: string, names: readonly string[], fresh: Data): void {
  desk.changeShop([what, freeName(one, (name) => names.includes(name))], fresh);
}

/** Removes an entry, unless it is still needed; says so either way. */
export function removeEntry(desk: Desk, what: Named, name: string): void {
  const [fault] = desk.changeShop([what, name], undefined);
  desk.notice.value = fault
    ? { kind: 'fault', text: `${name} is still needed: ${fault.message}` }
    : { kind: 'note', text: `${name} is removed. Undo brings it back.` };
}
