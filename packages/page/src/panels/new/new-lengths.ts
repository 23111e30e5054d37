import { parseLength, type Units } from '@fielded/core';
import { entryText } from '../../entry/entry-text.ts';
import type { NewJob, StartShape } from '../../job/new-job.ts';
import { sayMisread } from '../../words/say-misread.ts';

/** The lengths that a new job is asked for, in the order in which they stand. */
export const LENGTHS = ['stock', 'frame', 'width', 'depth', 'setback', 'swellGap', 'proud'] as const;
export type LengthName = (typeof LENGTHS)[number];

/** What their fields are called. */
export const LENGTH_LABELS: Readonly<Record<LengthName, string>> = {
  stock: 'Stock, planed',
  frame: 'Frame, thickness',
  width: 'Groove, width',
  depth: 'Groove, depth',
  setback: 'Groove, setback',
  swellGap: 'Swell gap',
  proud: 'Face proud by',
};

/** What is usual in a shop to begin with, mm. */
export const USUAL: Readonly<Record<Units, Readonly<Record<LengthName, number>>>> = {
  mm: { stock: 20, frame: 22, width: 6, depth: 10, setback: 8, swellGap: 2, proud: 0 },
  in: {
    stock: 19.05,
    frame: (25.4 * 13) / 16,
    width: 6.35,
    depth: (25.4 * 7) / 16,
    setback: (25.4 * 9) / 32,
    swellGap: 25.4 / 16,
    proud: 0,
  },
};

/** What is usual in a shop, as it stands in the fields to begin with. */
export function usualTexts(units: Units): Readonly<Record<LengthName, string>> {
  return Object.fromEntries(LENGTHS.map((name) => [name, entryText(USUAL[units][name], units)])) as Record<
    LengthName,
    string
  >;
}

/** Lengths as typed: in mm, null as long as any cannot be read; and what is wrong with each that cannot. */
interface ReadLengths {
  readonly lengths: Readonly<Record<LengthName, number>> | null;
  readonly faults: Readonly<Partial<Record<LengthName, string>>>;
}

/** Reads what was typed. */
export function readLengths(texts: Readonly<Record<LengthName, string>>, units: Units): ReadLengths {
  const faults: Partial<Record<LengthName, string>> = {};
  const lengths: Partial<Record<LengthName, number>> = {};
  for (const name of LENGTHS) {
    const read = parseLength(texts[name], units);
    if (!('mm' in read)) faults[name] = sayMisread(texts[name] ?? '', read);
    else if (read.mm < 0 && name !== 'proud') faults[name] = 'A size cannot be negative.';
    else lengths[name] = read.mm;
  }
  const whole = Object.keys(faults).length === 0;
  return { faults, lengths: whole ? (lengths as Record<LengthName, number>) : null };
}

/** A new job as asked for. Lengths mm. */
export function askFor(
  { stock, frame, width, depth, setback, swellGap, proud }: Readonly<Record<LengthName, number>>,
  title: string,
  units: Units,
  front: StartShape,
  back: StartShape | 'none',
): NewJob {
  return { title, units, stock, frame, groove: { width, depth, setback }, swellGap, front, back, proud };
}

/** The same sizes in the other unit: what is usual there for what was not touched, what cannot be read as it was typed. */
export function inOtherUnits(
  texts: Readonly<Record<LengthName, string>>,
  from: Units,
  to: Units,
): Readonly<Record<LengthName, string>> {
  if (from === to) return texts;
  const [usual, usualThere] = [usualTexts(from), usualTexts(to)];
  const change = (name: LengthName) => {
    if (texts[name] === usual[name]) return usualThere[name];
    const read = parseLength(texts[name], from);
    return 'mm' in read ? entryText(read.mm, to) : texts[name];
  };
  return Object.fromEntries(LENGTHS.map((name) => [name, change(name)])) as Record<LengthName, string>;
}
