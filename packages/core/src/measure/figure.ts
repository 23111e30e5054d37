import { type Misread, misread } from './misread.ts';

/** A figure as written: its value, and whether it was written as a fraction (3/4, 1-1/4). */
export interface WrittenFigure {
  readonly value: number;
  readonly fraction: boolean;
  /** What stands after the figure: its unit, or something unreadable. */
  readonly rest: string;
}

const FRACTION = /^(?:(\d+)(?: ?- ?| ))?(\d+) ?\/ ?(\d+)/;
const DECIMAL = /^((?:\d[\d.,]*|\.\d[\d.,]*))((?:e[+-]?\d+)?)/;

/**
 * The figure at the start of `text` (in plain notation, no sign): 19, 19.05, 19,05, .75, 1e3, 3/4, 1-1/4, 1 1/4.
 *
 * A comma is a decimal comma, unless three digits follow it and it could part thousands: then it is refused, since a
 * thousandfold slip is not to be guessed at.
 */
export function readFigure(text: string): WrittenFigure | Misread {
  const fraction = FRACTION.exec(text);
  if (fraction) return readFraction(fraction, text);
  const decimal = DECIMAL.exec(text);
  if (!decimal) return misread('no-figure', 'length');
  const [all, digits, exponent] = decimal as unknown as [string, string, string];
  const plain = readDecimal(digits);
  if (typeof plain !== 'string') return plain;
  const value = Number(plain + exponent);
  if (!Number.isFinite(value)) return misread('beyond', 'figure');
  return { value, fraction: false, rest: text.slice(all.length).trim() };
}

function readFraction(match: RegExpExecArray, text: string): WrittenFigure | Misread {
  const [all, wholeText, topText, bottomText] = match;
  const whole = wholeText === undefined ? 0 : Number(wholeText);
  const top = Number(topText);
  const bottom = Number(bottomText);
  if (bottom === 0) return misread('over-nothing', 'fraction');
  if (wholeText !== undefined && top >= bottom) return misread('past-a-whole', 'one-fraction');
  const value = whole + top / bottom;
  if (!Number.isFinite(value)) return misread('beyond', 'figure');
  return { value, fraction: true, rest: text.slice(all.length).trim() };
}

/** Digits with a decimal point, or what is wrong with them. */
function readDecimal(digits: string): string | Misread {
  if (/^\d+\.?$|^\d*\.\d+$/.test(digits)) return digits;
  if (/^\d+,\d+$/.test(digits)) {
    const [whole, part] = digits.split(',') as [string, string];
    if (part.length === 3 && whole.length <= 3 && !/^0/.test(whole))
      return misread('thousand', 'either', { one: `${whole}${part}`, other: `${whole}.${part}` });
    return `${whole}.${part}`;
  }
  if (/^\d{1,3}(,\d{3})+(\.\d+)?$/.test(digits)) return misread('commas', 'as', { text: digits.replaceAll(',', '') });
  if (/^\d{1,3}(\.\d{3})+,\d+$/.test(digits))
    return misread('points-and-comma', 'as', { text: digits.replaceAll('.', '').replace(',', '.') });
  return misread('points', 'point');
}
