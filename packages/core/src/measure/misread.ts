/** What stands in the way of reading a measure: what was read, and what to write instead. Both are parts of a sentence. */
export interface Misreading {
  readonly read: string;
  readonly instead: string;
}

/** What was read where no measure is (after "is"), and what to write instead (after "write"). */
export const MISREAD_WORDS = {
  'misread.empty': 'empty',
  'misread.too-long': '{characters} characters long',
  'misread.no-figure': 'without a figure',
  'misread.not-a-number': 'not a number',
  'misread.not-a-length': 'not a length',
  'misread.not-an-angle': 'not an angle',
  'misread.beyond': 'beyond any number',
  'misread.over-nothing': 'a division by nothing',
  'misread.past-a-whole': 'a whole number with more than a whole beside it',
  'misread.thousand': 'either a thousand or a decimal comma',
  'misread.commas': 'a figure with commas in it',
  'misread.points-and-comma': 'a figure with both points and a comma',
  'misread.points': 'a figure with too many points or commas',
  'misread.bare-fraction': 'a fraction with no unit',
  'misread.half-fraction': 'half a fraction',
  'misread.hyphen': 'a figure with a stray hyphen',
  'misread.several': 'more than one figure',
  'misread.feet': 'not feet and inches',
  'misread.after-feet': 'a figure with no unit after the feet',
  'misread.not-inches': 'feet with something else than inches after them',
  'misread.unit': 'in "{unit}", which is not a unit known here',
  'misread.angle-unit': 'in "{unit}", which is not a unit of angle',
  'instead.length': 'a figure and its unit, such as 19 mm or 3/4 in',
  'instead.figure': 'a figure such as 19 mm or 3/4 in',
  'instead.fraction': 'a fraction such as 3/4 in',
  'instead.one-fraction': 'it as one fraction, such as 5/4 in, or as 1-1/4 in',
  'instead.either': '{one} or {other}',
  'instead.as': '{text}',
  'instead.point': 'one decimal point, such as 19.05 mm',
  'instead.feet': 'it like 5\' 3-1/2"',
  'instead.units': 'it in mm, cm, m, in or ft',
  'instead.angle': 'degrees, such as 18 or 18°',
} as const;

type Words = typeof MISREAD_WORDS;
type WhatRead = keyof { [K in keyof Words as K extends `misread.${infer Key}` ? Key : never]: true };
type Instead = keyof { [K in keyof Words as K extends `instead.${infer Key}` ? Key : never]: true };

/** A part of a sentence, by its key, with what stands in it. */
export interface MisreadPart {
  readonly sentence: keyof Words;
  readonly figures: Readonly<Record<string, string>>;
}

/** A misreading not yet in words. */
export interface Misread {
  readonly read: MisreadPart;
  readonly instead: MisreadPart;
}

/** What was read and what to write instead, to be put into words; `figures` are what stands in either. */
export function misread(read: WhatRead, instead: Instead, figures: MisreadPart['figures'] = {}): Misread {
  return {
    read: { sentence: `misread.${read}`, figures },
    instead: { sentence: `instead.${instead}`, figures },
  };
}

/** A misreading in English. */
export function sayMisreading({ read, instead }: Misread): Misreading {
  return { read: fill(read), instead: fill(instead) };
}

function fill({ sentence, figures }: MisreadPart): string {
  return MISREAD_WORDS[sentence].replace(/\{(\w+)\}/g, (_, name: string) => figures[name] ?? '');
}
