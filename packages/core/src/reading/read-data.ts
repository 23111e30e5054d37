import { tellFault } from '../problem/say-fault.ts';
import { DEEPEST_NESTING, MOST_VALUES } from './limits.ts';
import { NO_SHOP_HERE, type ReadJob, type ReadMemory, type ReadShop, readJobTree, readShopTree } from './read-tree.ts';
import { createSteelMemory } from './steel.ts';
import { joinPath, type Place, type TextFault, type Tree } from './tree.ts';

/**
 * Reads a job that is already plain data, as an editor holds it: what a file says, with lengths as written.
 *
 * The same checks and the same words as for a file, without its lines and columns: they are 0, and `at` says where.
 * `shop` is the content of the shop file, likewise. Needs no YAML. Never throws on what JSON can hold.
 *
 * @example readJobData({ fielded: 1 }).faults.map((fault) => fault.code) // ['missing-key', 'missing-key', 'no-cuts']
 */
export function readJobData(value: unknown, shop?: unknown): ReadJob {
  return readJobTree(treeOf(value), (path) => {
    if (shop !== undefined) return readShopData(shop, path ?? '');
    return path === undefined ? undefined : NO_SHOP_HERE;
  });
}

/** Reads jobs that are plain data, as `readJobData` does. */
export type JobReader = (value: unknown, shop?: unknown) => ReadJob;

/**
 * A reader for an editor, which reads a job anew at every keystroke and every step of a drag: the shop is read once as long
 * as it is the same object, and so is what its knives cut. What it is given must never be changed in place.
 *
 * @example createJobReader()(data, shop) // as readJobData(data, shop)
 */
export function createJobReader(): JobReader {
  const memory: ReadMemory = { steel: createSteelMemory(), checked: new WeakMap(), plain: new WeakSet() };
  let last: { readonly data: unknown; readonly name: string; readonly read: ReadShop } | null = null;
  const readKept = (data: unknown, name: string): ReadShop => {
    const known = last !== null && last.data === data && last.name === name;
    const kept = known ? last! : { data, name, read: readShopData(data, name) };
    last = kept;
    return kept.read;
  };
  return (value, shop) =>
    readJobTree(
      treeOf(value),
      (path) => {
        if (shop !== undefined) return readKept(shop, path ?? '');
        return path === undefined ? undefined : NO_SHOP_HERE;
      },
      undefined,
      memory,
    );
}

/** Reads a shop that is already plain data; `name` is what its faults call it. */
export function readShopData(value: unknown, name = ''): ReadShop {
  return readShopTree(treeOf(value), name);
}

/** A tree over plain data, which has no places in any text. */
function treeOf(value: unknown): Tree {
  if (!holdsTooMuch(value)) {
    // Only a fault asks for places: a job that can be read, at every step of a drag, does without.
    let found: ReturnType<typeof findPlaces> | null = null;
    const find = () => {
      found ??= findPlaces(value);
      return found;
    };
    return {
      value,
      get places() {
        return find().places;
      },
      get keyPlaces() {
        return find().keyPlaces;
      },
      faults: [],
    };
  }
  const fault: TextFault = { at: '', line: 0, column: 0, text: '', ...tellFault('fault.yaml-too-deep.data', {}) };
  return { value: null, places: new Map(), keyPlaces: new Map(), faults: [fault] };
}

/** Whether there are more values than are read, or deeper ones. */
function holdsTooMuch(value: unknown): boolean {
  let count = 0;
  const isTooMuch = (item: unknown, depth: number): boolean => {
    count += 1;
    if (depth > DEEPEST_NESTING || count > MOST_VALUES) return true;
    if (typeof item !== 'object' || item === null) return false;
    return Object.values(item).some((inner) => isTooMuch(inner, depth + 1));
  };
  return isTooMuch(value, 0);
}

/** Every value and every key by its path, with what stands there. */
function findPlaces(value: unknown): Pick<Tree, 'places' | 'keyPlaces'> {
  const places = new Map<string, Place>();
  const keyPlaces = new Map<string, Place>();
  const walk = (item: unknown, at: string): void => {
    places.set(at, { line: 0, column: 0, text: textOf(item) });
    if (typeof item !== 'object' || item === null) return;
    for (const [key, inner] of Object.entries(item)) {
      const path = joinPath(at, Array.isArray(item) ? Number(key) : key);
      keyPlaces.set(path, { line: 0, column: 0, text: key });
      walk(inner, path);
    }
  };
  walk(value, '');
  return { places, keyPlaces };
}

function textOf(value: unknown): string {
  if (typeof value === 'object' && value !== null) return Array.isArray(value) ? '[…]' : '{…}';
  const line = String(value).slice(0, 60).replace(/\s+/g, ' ').trim();
  return line.length > 40 ? `${line.slice(0, 38)}…` : line;
}
