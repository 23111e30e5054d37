/** What stands in the way of reading a measure: what was read, and what to write instead. Both are parts of a sentence. */
export interface Misreading {
  readonly read: string;
  readonly instead: string;
}

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
export function readFigure(text: string): WrittenFigure | Misreading {
  const fraction = FRACTION.exec(text);
  if (fraction) return readFraction(fraction, text);
  const decimal = DECIMAL.exec(text);
  if (!decimal) return { read: 'without a figure', instead: 'a figure and its unit, such as 19 mm or 3/4 in' };
  const [all, digits, exponent] = decimal as unknown as [string, string, string];
  const plain = readDecimal(digits);
  if (typeof plain !== 'string') return plain;
  const value = Number(plain + exponent);
  if (!Number.isFinite(value)) return { read: 'beyond any number', instead: 'a figure such as 19 mm or 3/4 in' };
  return { value, fraction: false, rest: text.slice(all.length).trim() };
}

function readFraction(match: RegExpExecArray, text: string): WrittenFigure | Misreading {
  const [all, wholeText, topText, bottomText] = match;
  const whole = wholeText === undefined ? 0 : Number(wholeText);
  const top = Number(topText);
  const bottom = Number(bottomText);
  if (bottom === 0) return { read: 'a division by nothing', instead: 'a fraction such as 3/4 in' };
  if (wholeText !== undefined && top >= bottom)
    return {
      read: 'a whole number with more than a whole beside it',
      instead: 'it as one fraction, such as 5/4 in, or as 1-1/4 in',
    };
  const value = whole + top / bottom;
  if (!Number.isFinite(value)) return { read: 'beyond any number', instead: 'a figure such as 19 mm or 3/4 in' };
  return { value, fraction: true, rest: text.slice(all.length).trim() };
}

/** Digits with a decimal point, or what is wrong with them. */
function readDecimal(digits: string): string | Misreading {
  if (/^\d+\.?$|^\d*\.\d+$/.test(digits)) return digits;
  if (/^\d+,\d+$/.test(digits)) {
    const [whole, part] = digits.split(',') as [string, string];
    if (part.length === 3 && whole.length <= 3 && !/^0/.test(whole))
      return { read: 'either a thousand or a decimal comma', instead: `${whole}${part} or ${whole}.${part}` };
    return `${whole}.${part}`;
  }
  if (/^\d{1,3}(,\d{3})+(\.\d+)?$/.test(digits))
    return { read: 'a figure with commas in it', instead: digits.replaceAll(',', '') };
  if (/^\d{1,3}(\.\d{3})+,\d+$/.test(digits))
    return { read: 'a figure with both points and a comma', instead: digits.replaceAll('.', '').replace(',', '.') };
  return { read: 'a figure with too many points or commas', instead: 'one decimal point, such as 19.05 mm' };
}
