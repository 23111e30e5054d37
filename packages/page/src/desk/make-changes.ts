import type { Fault, ReadJob, Units } from '@fielded/core';
import type { ReadonlySignal } from '@preact/signals';
import { applyChanges, type JobChange } from '../job/changes.ts';
import { type Data, getAt, setAtKeys } from '../job/data.ts';
import type { Desk } from './desk.ts';
import type { Doc, ShopDoc } from './doc.ts';
import type { Put } from './undo-steps.ts';

/** Changes of job and shop: each is read first, and put on the desk where it has no faults. */
export function createChanges(
  doc: ReadonlySignal<Doc>,
  readDoc: (doc: Doc) => ReadJob,
  put: Put,
): Pick<Desk, 'change' | 'changeShop' | 'setLogo' | 'check'> {
  const changed = (changes: readonly JobChange[]): Doc => ({
    ...doc.peek(),
    data: applyChanges(doc.peek().data, changes),
  });
  const putIfRead = (next: Doc, key?: string): readonly Fault[] => {
    const { faults } = readDoc(next);
    if (faults.length === 0) put(next, key);
    return faults;
  };
  return {
    change(changes, key) {
      const next = changed(changes);
      const { data } = doc.peek();
      return changes.every(([path, value]) => sameData(getAt(data, path), value)) ? [] : putIfRead(next, key);
    },
    changeShop(keys, value, key) {
      const { shop } = doc.peek();
      const before = shop ?? newShop(readDoc(doc.peek()).job!.units);
      const next = { ...before, data: setAtKeys(before.data, keys, value) };
      return JSON.stringify(next) === JSON.stringify(shop) ? [] : putIfRead({ ...doc.peek(), shop: next }, key);
    },
    setLogo(logo) {
      const { shop, ...others } = doc.peek();
      if (shop === null) return;
      const { logo: _, ...before } = shop;
      const data = setAtKeys(before.data, ['logo'], logo?.name);
      putIfRead({ ...others, shop: { ...before, data, ...(logo !== null && { logo: logo.id }) } });
    },
    check: (changes) => readDoc(changed(changes)).faults,
  };
}

/** A shop begun on the page. */
function newShop(units: Units): ShopDoc {
  return { name: 'shop.yaml', data: { fielded: 1, units }, text: '' };
}

function sameData(one: Data | undefined, other: Data | undefined): boolean {
  return one === other || JSON.stringify(one) === JSON.stringify(other);
}
