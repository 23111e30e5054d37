// What a value given by hand must be, each refused with its place and what it is.

export function above(at: string, value: number | undefined): void {
  if (!(Number.isFinite(value) && value! > 0)) throw new RangeError(`${at} must be above 0, got ${shown(value)}`);
}

export function atLeast(at: string, value: number | undefined, least: number): void {
  if (!(Number.isFinite(value) && value! >= least))
    throw new RangeError(`${at} must be ${least} or more, got ${shown(value)}`);
}

export function oneOf(at: string, value: string | undefined, known: readonly string[]): void {
  if (!known.includes(value!)) throw new RangeError(`${at} must be one of ${known.join(', ')}, got ${shown(value)}`);
}

/** Every number in a value, however deep, is one that can be computed with. */
export function finite(at: string, value: unknown): void {
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new RangeError(`${at} must be a finite number, got ${value}`);
    return;
  }
  if (typeof value !== 'object' || value === null) return;
  for (const key in value) {
    const inner = (value as Record<string, unknown>)[key];
    // The path is put together only where there is something to say or to look into.
    if (typeof inner === 'object' || (typeof inner === 'number' && !Number.isFinite(inner)))
      finite(Array.isArray(value) ? `${at}[${key}]` : `${at}.${key}`, inner);
  }
}

/** A list, as JavaScript may give something else. */
export function listAt<T>(at: string, value: readonly T[] | undefined): readonly T[] {
  if (value !== undefined && value !== null && !Array.isArray(value))
    throw new RangeError(`${at} must be a list, got ${shown(value)}`);
  return value ?? [];
}

/** A group of values by name. */
export function groupAt<T extends object>(at: string, value: T | undefined): T {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new RangeError(`${at} must be an object, got ${shown(value)}`);
  return value;
}

export function textAt(at: string, value: unknown): void {
  if (typeof value !== 'string') throw new RangeError(`${at} must be a text, got ${shown(value)}`);
}

export function shown(value: unknown): string {
  if (typeof value === 'string') return `"${value}"`;
  if (Array.isArray(value)) return 'a list';
  return typeof value === 'object' && value !== null ? 'an object' : String(value);
}
