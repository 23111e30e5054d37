/** A job as plain data: what its file says, lengths as written there. Never changed in place. */
export type Data = string | number | boolean | null | readonly Data[] | { readonly [key: string]: Data };

export type Keys = readonly (string | number)[];

/**
 * The keys of a path.
 *
 * @example keysOf('cuts[0].profile.depth') // ['cuts', 0, 'profile', 'depth']
 */
function keysOf(path: string): Keys {
  return [...path.matchAll(/\[(\d+)\]|[^.[\]]+/g)].map(([word, index]) => (index === undefined ? word : Number(index)));
}

/** The path of keys. @example pathOf(['cuts', 0, 'depth']) // 'cuts[0].depth' */
export function pathOf(keys: Keys): string {
  return keys.reduce<string>((path, key) => {
    if (typeof key === 'number') return `${path}[${key}]`;
    return path === '' ? key : `${path}.${key}`;
  }, '');
}

/** The value at a path; undefined where there is none. */
export function getAt(data: Data | undefined, path: string): Data | undefined {
  return getAtKeys(data, keysOf(path));
}

/** The data with another value at a path; groups on the way are made, and undefined takes the value out. */
export function setAt(data: Data, path: string, value: Data | undefined): Data {
  return setAtKeys(data, keysOf(path), value);
}

/** As `getAt`, by keys, which may hold any characters. */
export function getAtKeys(data: Data | undefined, keys: Keys): Data | undefined {
  return keys.reduce<Data | undefined>(
    (here, key) =>
      typeof here === 'object' && here !== null && Object.hasOwn(here, key)
        ? (here as Record<string | number, Data>)[key]
        : undefined,
    data,
  );
}

/** As `setAt`, by keys, which may hold any characters. */
export function setAtKeys(data: Data | undefined, keys: Keys, value: Data | undefined): Data {
  const [key, ...rest] = keys;
  if (key === undefined) return value ?? null;
  const inner = typeof data === 'object' && data !== null ? (data as Record<string | number, Data>)[key] : undefined;
  const next = rest.length === 0 ? value : setAtKeys(inner, rest, value);
  if (typeof key === 'number') {
    const list = Array.isArray(data) ? [...(data as readonly Data[])] : [];
    if (next === undefined) list.splice(key, 1);
    else list[key] = next;
    return list;
  }
  const { [key]: _, ...others } = (isGroup(data) ? data : {}) as Record<string, Data>;
  if (next === undefined) return others;
  return isGroup(data) && Object.hasOwn(data, key) ? { ...data, [key]: next } : { ...others, [key]: next };
}

/** Whether data is a group of keys. */
export function isGroup(data: Data | undefined): data is { readonly [key: string]: Data } {
  return typeof data === 'object' && data !== null && !Array.isArray(data);
}
