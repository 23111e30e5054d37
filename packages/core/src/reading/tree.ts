import type { ToldFault } from '../problem/say-fault.ts';

/** Where a value stands in the text: 1-based; `text` is what stands there, shortened. */
export interface Place {
  readonly line: number;
  readonly column: number;
  readonly text: string;
}

/** What is wrong at a place of the text, before it is known which file that is. */
export interface TextFault extends Place, ToldFault {
  readonly at: string;
}

/** A file's content as plain data, and the place of every value and of every key, by their paths in the file. */
export interface Tree {
  readonly value: unknown;
  readonly places: ReadonlyMap<string, Place>;
  readonly keyPlaces: ReadonlyMap<string, Place>;
  readonly faults: readonly TextFault[];
}

/** The path of `key` in `at`: `panel.thickness`, `cuts[1]`. */
export function joinPath(at: string, key: string | number): string {
  if (typeof key === 'number') return `${at}[${key}]`;
  return at === '' ? key : `${at}.${key}`;
}
