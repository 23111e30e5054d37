import { readFigure } from './figure.ts';
import { type Misread, type Misreading, misread, sayMisreading } from './misread.ts';
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
  const reading = measureLength(text, units);
  return 'mm' in reading ? reading : sayMisreading(reading);
}

/** The same with what was read not yet in words. */
export function measureLength(text: string, units: Units): { readonly mm: number } | Misread {
  if (text.length > LONGEST_TEXT) return misread('too-long', 'length', { characters: String(text.length) });
  const plain = plainNotation(text);
  if (plain === '') return misread('empty', 'length');
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

function readOne(text: string, units: Units): { readonly mm: number } | Misread {
  if (/^\.?(nan|inf|infinity)$/.test(text)) return misread('not-a-number', 'length');
  if (!/\d/.test(text)) return misread('not-a-length', 'length');
  const figure = readFigure(text);
  if ('read' in figure) return figure;
  if (figure.rest === '') {
    if (figure.fraction && units === 'mm') return misread('bare-fraction', 'as', { text: `${text} in` });
    return inReach(toMillimetres(figure.value, units));
  }
  const unit = findUnit(figure.rest);
  if (unit === undefined) return explainRest(text, figure.rest);
  return inReach(toMillimetres(figure.value, unit));
}

function inReach(mm: number): { readonly mm: number } | Misread {
  return Number.isFinite(mm) ? { mm } : misread('beyond', 'length');
}

/** 5' 3-1/2", 5'-3", 5 ft 3 in; undefined when the text is not of that kind. */
function readFeetAndInches(text: string): { readonly mm: number } | Misread | undefined {
  const match = FEET_AND_INCHES.exec(text);
  if (!match) return undefined;
  const feet = readFigure(match[1]!);
  const inches = readFigure(match[2]!);
  if ('read' in feet) return feet;
  if ('read' in inches) return inches;
  if (feet.rest !== '') return misread('feet', 'feet');
  if (inches.rest === '') return misread('after-feet', 'as', { text: `${text}"` });
  if (findUnit(inches.rest) !== 'in') return misread('not-inches', 'feet');
  return inReach(toMillimetres(feet.value * 12 + inches.value, 'in'));
}

function findUnit(text: string): LengthUnit | undefined {
  return (Object.keys(SPELLINGS) as LengthUnit[]).find((unit) => SPELLINGS[unit].includes(text));
}

function explainRest(text: string, rest: string): Misread {
  if (/^-+ ?\d/.test(rest)) return mendHyphens(text);
  if (/^\/|\/$/.test(rest)) return misread('half-fraction', 'fraction');
  if (/\d/.test(rest)) return misread('several', 'length');
  return misread('unit', 'units', { unit: rest });
}

/** 1--1/4 was meant as 1-1/4; anything else with hyphens gets the plain example. */
function mendHyphens(text: string): Misread {
  const mended = text.replace(/ ?-[- ]*/, '-');
  const figure = readFigure(mended);
  if ('read' in figure || !figure.fraction) return misread('hyphen', 'length');
  if (figure.rest === '') return misread('hyphen', 'as', { text: `${mended} in` });
  return findUnit(figure.rest) === undefined ? misread('hyphen', 'length') : misread('hyphen', 'as', { text: mended });
}
