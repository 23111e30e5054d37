import type { Place, Tree } from './tree.ts';

/** Keys that makers write for a key of the files, in small letters with nothing between words. */
const KEYS: Readonly<Record<string, string>> = {
  mullion: 'muntin',
  midrail: 'midRail',
  lockrail: 'midRail',
};

/** Words that makers write for a word of the files, under the key that holds them. */
const WORDS: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  shape: { rabbet: 'rebate' },
  rotation: {
    anticlockwise: 'counterclockwise',
    'anti-clockwise': 'counterclockwise',
    'counter-clockwise': 'counterclockwise',
  },
  run: { 'face down': 'under', 'face up': 'over' },
  presented: { vertical: 'on-edge', 'on edge': 'on-edge' },
  terms: { uk: 'british', us: 'american' },
};

/**
 * The tree with the trade's other names read as the files' own: a rabbet is a rebate, a mullion a muntin, anticlockwise is
 * counterclockwise. Places stay those of what was written. A key whose own name stands beside it is left to be refused.
 * Parts in `plain` are known to hold none; those found so are added.
 */
export function readAliases(tree: Tree, plain: WeakSet<object> = new WeakSet()): Tree {
  const moved: (readonly [from: string, to: string])[] = [];
  const value = walk(tree.value, '', moved, plain);
  if (moved.length === 0) return value === tree.value ? tree : { ...tree, value };
  return { ...tree, value, places: move(tree.places, moved), keyPlaces: move(tree.keyPlaces, moved) };
}

/** The value with aliases replaced; the same object where it holds none. */
function walk(value: unknown, at: string, moved: (readonly [string, string])[], plain: WeakSet<object>): unknown {
  if (typeof value !== 'object' || value === null || plain.has(value)) return value;
  const own = Array.isArray(value) ? walkList(value, at, moved, plain) : walkGroup(value, at, moved, plain);
  if (own === value) plain.add(value);
  return own;
}

function walkList(
  list: readonly unknown[],
  at: string,
  moved: (readonly [string, string])[],
  plain: WeakSet<object>,
): unknown {
  const items = list.map((item, i) => walk(item, `${at}[${i}]`, moved, plain));
  return items.some((item, i) => item !== list[i]) ? items : list;
}

function walkGroup(value: object, at: string, moved: (readonly [string, string])[], plain: WeakSet<object>): unknown {
  let changed = false;
  const group: Record<string, unknown> = Object.create(null);
  for (const [key, inner] of Object.entries(value)) {
    const path = at === '' ? key : `${at}.${key}`;
    const name = aliasOf(key, value);
    const word = typeof inner === 'string' ? wordFor(name, inner) : walk(inner, path, moved, plain);
    if (name !== key) moved.push([path, at === '' ? name : `${at}.${name}`]);
    if (name !== key || word !== inner) changed = true;
    group[name] = word;
  }
  return changed ? group : value;
}

function aliasOf(key: string, group: object): string {
  const plain = key.toLowerCase().replace(/[\s_-]/g, '');
  const name = Object.hasOwn(KEYS, plain) ? KEYS[plain]! : key;
  return name !== key && Object.hasOwn(group, name) ? key : name;
}

function wordFor(key: string, word: string): string {
  const words = Object.hasOwn(WORDS, key) ? WORDS[key]! : {};
  const plain = word.toLowerCase();
  return Object.hasOwn(words, plain) ? words[plain]! : word;
}

/** The places with those of moved keys, and of all that stands in them, under their new paths as well. */
function move(
  places: ReadonlyMap<string, Place>,
  moved: readonly (readonly [string, string])[],
): ReadonlyMap<string, Place> {
  const all = new Map(places);
  for (const [path, place] of places) {
    for (const [from, to] of moved)
      if (path === from || path.startsWith(`${from}.`)) all.set(to + path.slice(from.length), place);
  }
  return all;
}
