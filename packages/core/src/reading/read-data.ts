import { DEEPEST_NESTING, MOST_VALUES } from './limits.ts';
import { NO_SHOP_HERE, type ReadJob, type ReadShop, readJobTree, readShopTree } from './read-tree.ts';
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

/** Reads a shop that is already plain data; `name` is what its faults call it. */
export function readShopData(value: unknown, name = ''): ReadShop {
  return readShopTree(treeOf(value), name);
}

/** A tree over plain data, which has no places in any text. */
function treeOf(value: unknown): Tree {
  const places = new Map<string, Place>();
  const keyPlaces = new Map<string, Place>();
  let deep = false;
  const walk = (item: unknown, at: string, depth: number): void => {
    deep ||= depth > DEEPEST_NESTING || places.size > MOST_VALUES;
    if (deep) return;
    places.set(at, { line: 0, column: 0, text: textOf(item) });
    if (typeof item !== 'object' || item === null) return;
    for (const [key, inner] of Object.entries(item)) {
      const path = joinPath(at, Array.isArray(item) ? Number(key) : key);
      keyPlaces.set(path, { line: 0, column: 0, text: key });
      walk(inner, path, depth + 1);
    }
  };
  walk(value, '', 0);
  if (!deep) return { value, places, keyPlaces, faults: [] };
  const what = 'The job holds too much, or is nested too deep';
  const fault: TextFault = {
    code: 'yaml-too-deep',
    at: '',
    line: 0,
    column: 0,
    text: '',
    what,
    instead: 'Write it as in the examples',
  };
  return { value: null, places: new Map(), keyPlaces: new Map(), faults: [fault] };
}

function textOf(value: unknown): string {
  if (typeof value === 'object' && value !== null) return Array.isArray(value) ? '[…]' : '{…}';
  const line = String(value).slice(0, 60).replace(/\s+/g, ' ').trim();
  return line.length > 40 ? `${line.slice(0, 38)}…` : line;
}
