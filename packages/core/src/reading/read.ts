import type { Fault } from '../problem/problem.ts';
import type { Refusal } from './fault-desk.ts';
import { inOrder } from './fault-words.ts';
import { readKept } from './kept-trees.ts';
import { NO_SHOP_HERE, type ReadJob, type ReadShop, readJobTree, readShopTree } from './read-tree.ts';

export type { ReadJob, ReadShop } from './read-tree.ts';

/** What the one who asks can get at: the core itself opens no files. */
export interface ReadOptions {
  /** The text of the shop file that a job names, or why there is none to be had, as a sentence without its full stop. */
  readonly loadShop?: (path: string) => string | Refusal;
  /**
   * The outline in a drawing that a profile names, as SVG path data in mm, or why there is none to be had. `from` is the
   * shop file that names it, as the job names that; '' for the job itself.
   */
  readonly loadOutline?: (path: string, from: string) => string | Refusal;
  /** A shop file to use whatever the job names, and what it is called. */
  readonly shop?: { readonly text: string; readonly name: string };
}

/** What a file says as plain data: strings, numbers, booleans, null, lists and groups; null where it is not YAML. */
export interface FileData {
  readonly value: unknown;
  readonly faults: readonly Fault[];
}

/**
 * Reads a job file, YAML 1.2 or JSON, and the shop file it names: millimetres, radians, everything filled in.
 *
 * All faults are listed at once, each with its line and column, what was read and what would be accepted; a fault in
 * the shop file carries that file's name. Bounded in time and memory for any text. Never throws.
 *
 * @example readJob('fielded: 1').faults.map((fault) => fault.code) // ['missing-key', 'missing-key', 'no-cuts']
 */
export function readJob(text: string, options: ReadOptions = {}): ReadJob {
  const { shop, loadShop, loadOutline } = options;
  const findShop = (path: string | undefined) => {
    if (shop) return readShop(shop.text, shop.name, loadOutline);
    if (path === undefined) return undefined;
    const loaded = loadShop?.(path) ?? NO_SHOP_HERE;
    return typeof loaded === 'string' ? readShop(loaded, path, loadOutline) : loaded;
  };
  return readJobTree(readKept(text), findShop, loadOutline);
}

/** Reads a shop file by itself; `name` is what its faults call it. */
export function readShop(text: string, name = '', loadOutline?: ReadOptions['loadOutline']): ReadShop {
  return readShopTree(readKept(text), name, loadOutline);
}

/** The content of a job or shop file as plain data, as it stands there: nothing filled in, no unit applied. */
export function readFileData(text: string): FileData {
  const { value, faults } = readKept(text);
  return { value: copyData(value), faults: inOrder(faults, '') };
}

/** Data that may be changed, while what is kept of its text stays as it is. */
function copyData(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map(copyData);
  const copy: Record<string, unknown> = Object.create(null);
  for (const [key, inner] of Object.entries(value)) copy[key] = copyData(inner);
  return copy;
}
