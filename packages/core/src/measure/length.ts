import type { Misreading } from './figure.ts';
import { readFigure } from './figure.ts';
import { plainNotation } from './notation.ts';

/** The unit that a file's bare numbers are in. */
export type Units = 'mm' | 'in';

/** The longest length that is accepted anywhere, mm: no door is ten metres high. */
export const LONGEST = 10_000;

type LengthUnit = 'mm' | 'cm' | 'm' | 'in' | 'ft';

const SPELLINGS: Readonly<Record<LengthUnit, readonly string[]>> = {
  mm: ['mm', 'mm.', 'millimetre', 'millimetres', 'millimeter', 'millimeters'],
  cm: ['cm', 'cm.', 'centimetre', 'centimetres', 'centimeter', 'centimeters'],
  m: ['m', 'metre', 'metres', 'meter', 'meters'],
  in: ['in', 'in.', 'inch', 'inches', '"'],
  ft: ['ft', 'ft.', 'foot', 'feet', "'"],
};

const LONGEST_TEXT = 60;
const EXAMPLE = 'a figure and its unit, such as 19 mm or 3/4 in';
const FEET_AND_INCHES = /^(.*?\d) ?(?:'|ft\.?|foot|feet) ?-? ?([\d.].*)$/;

/**
 * A length as a maker writes it, in mm, or what was read and what to write instead.
 *
 * Reads `19 mm`, `1.9 cm`, `3/4 in`, `3/4"`, `1-1/4"`, `1 1/4 in`, `1¼ in`, `.75"`, `19,05`, `5'`, `5' 3-1/2"`, with
 * typographic quotes, primes, dashes and spaces; a bare figure is in `units`. A leading minus is read: whether a
 * length may be negative is for the one who asked. A bare fraction in a millimetre file is refused: it is nearly
 * always inches. Exact: inches are multiplied by 254 and divided by 10, so 64ths come out correctly rounded.
 *
 * @example parseLength('3/4 in', 'mm') // { mm: 19.05 }
 * @example parseLength('3/4', 'mm')    // { read: 'a fraction with no unit', instead: '3/4 in' }
 */
export function parseLength(text: string, units: Units): { readonly mm: number } | Misreading {
  if (text.length > LONGEST_TEXT) return { read: `${text.length} characters long`, instead: EXAMPLE };
  const plain = plainNotation(text);
  if (plain === '') return { read: 'empty', instead: EXAMPLE };
  const sign = /^[+-]/.exec(plain)?.[0] ?? '';
  const body = plain.slice(sign.length).trim();
  const reading = readFeetAndInches(body) ?? readOne(body, units);
  if (!('mm' in reading)) return reading;
  return { mm: sign === '-' && reading.mm !== 0 ? -reading.mm : reading.mm };
}

/** A bare number of a file, in mm: the one place where a file's unit is turned into the engine's. */
export function toMillimetres(value: number, units: LengthUnit): number {
  switch (units) {
    case 'mm':
      return value;
    case 'cm':
      return value * 10;
    case 'm':
      return value * 1000;
    case 'in':
      return (value * 254) / 10;
    case 'ft':
      return (value * 3048) / 10;
  }
}

function readOne(text: string, units: Units): { readonly mm: number } | Misreading {
  if (/^\.?(nan|inf|infinity)$/.test(text)) return { read: 'not a number', instead: EXAMPLE };
  if (!/\d/.test(text)) return { read: 'not a length', instead: EXAMPLE };
  const figure = readFigure(text);
  if ('read' in figure) return figure;
  if (figure.rest === '') {
    if (figure.fraction && units === 'mm') return { read: 'a fraction with no unit', instead: `${text} in` };
    return inReach(toMillimetres(figure.value, units));
  }
  const unit = findUnit(figure.rest);
  if (unit === undefined) return explainRest(text, figure.rest);
  return inReach(toMillimetres(figure.value, unit));
}

function inReach(mm: number): { readonly mm: number } | Misreading {
  return Number.isFinite(mm) ? { mm } : { read: 'beyond any number', instead: EXAMPLE };
}

/** 5' 3-1/2", 5'-3", 5 ft 3 in; undefined when the text is not of that kind. */
function readFeetAndInches(text: string): { readonly mm: number } | Misreading | undefined {
  const match = FEET_AND_INCHES.exec(text);
  if (!match) return undefined;
  const feet = readFigure(match[1]!);
  const inches = readFigure(match[2]!);
  if ('read' in feet) return feet;
  if ('read' in inches) return inches;
  if (feet.rest !== '') return { read: 'not feet and inches', instead: `it like 5' 3-1/2"` };
  if (inches.rest === '') return { read: 'a figure with no unit after the feet', instead: `${text}"` };
  if (findUnit(inches.rest) !== 'in')
    return { read: 'feet with something else than inches after them', instead: `it like 5' 3-1/2"` };
  return inReach(toMillimetres(feet.value * 12 + inches.value, 'in'));
}

function findUnit(text: string): LengthUnit | undefined {
  return (Object.keys(SPELLINGS) as LengthUnit[]).find((unit) => SPELLINGS[unit].includes(text));
}

function explainRest(text: string, rest: string): Misreading {
  if (/^-+ ?\d/.test(rest)) return { read: 'a figure with a stray hyphen', instead: mendHyphens(text) };
  if (/^\/|\/$/.test(rest)) return { read: 'half a fraction', instead: 'a fraction such as 3/4 in' };
  if (/\d/.test(rest)) return { read: 'more than one figure', instead: EXAMPLE };
  return { read: `in "${rest}", which is not a unit known here`, instead: 'it in mm, cm, m, in or ft' };
}

/** 1--1/4 was meant as 1-1/4; anything else with hyphens gets the plain example. */
function mendHyphens(text: string): string {
  const mended = text.replace(/ ?-[- ]*/, '-');
  const figure = readFigure(mended);
  if ('read' in figure || !figure.fraction) return EXAMPLE;
  if (figure.rest === '') return `${mended} in`;
  return findUnit(figure.rest) === undefined ? EXAMPLE : mended;
}
