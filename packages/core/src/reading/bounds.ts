import type { Said } from '../problem/problem.ts';
import { toldPart } from '../problem/say-fault.ts';

/** Which values are accepted: from `least`, or more than `above`, up to `most`. */
export interface Bounds {
  readonly least?: number;
  readonly above?: number;
  readonly most?: number;
  readonly whole?: boolean;
}

/** Whether a value is accepted. */
export function isWithin(value: number, { least, above, most }: Bounds): boolean {
  return !(value < (least ?? -Infinity) || value <= (above ?? -Infinity) || value > (most ?? Infinity));
}

/** Which way a value lies outside its bounds, in words. */
export function sizeWord(value: number, { least, above }: Bounds): Said {
  const small = value < (least ?? -Infinity) || value <= (above ?? -Infinity);
  return toldPart(small ? 'read.too-small' : 'read.too-big', {});
}

/** Bounds in words; there is one at least. */
export function tellBounds({ least, above, most }: Bounds, write: (value: number) => string): Said {
  if (above !== undefined)
    return most === undefined
      ? toldPart('bounds.above', { least: write(above) })
      : toldPart('bounds.above-to', { least: write(above), most: write(most) });
  if (least === undefined) return toldPart('bounds.most', { most: write(most ?? Infinity) });
  return most === undefined
    ? toldPart('bounds.least', { least: write(least) })
    : toldPart('bounds.between', { least: write(least), most: write(most) });
}
