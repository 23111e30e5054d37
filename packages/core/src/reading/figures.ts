import type { Moisture } from '../job/job.ts';
import { measureAngle, toRadians } from '../measure/angle.ts';
import { formatLength } from '../measure/format.ts';
import { LONGEST, measureLength, toMillimetres, type Units } from '../measure/length.ts';
import type { Said } from '../problem/problem.ts';
import { toldKey, toldPart, type ValueWords } from '../problem/say-fault.ts';
import { type Bounds, isWithin, sizeWord, tellBounds } from './bounds.ts';
import { type FigureSchema, figure, type Reading } from './figure-schema.ts';

/** Less than a millionth of a millimetre is nothing: no radius then grows past what a number holds. */
const LEAST_LENGTH = 1e-6;

/** What a length is called in what to write. */
export type LengthWord = 'length' | 'thickness' | 'width' | 'depth' | 'reach';

/** A length: mm out. `word` names it in what to write ("a thickness above 0"). */
export function length(units: Units, bounds: Bounds, word: LengthWord = 'length'): FigureSchema {
  return figure({ form: 'length' }, (input) => readLength(input, units, { most: LONGEST, ...bounds }, word));
}

/** A default of so many mm as a file would write it: the same length in a file of inches. */
export function millimetres(mm: number): string {
  return `${mm} mm`;
}

function readLength(input: unknown, units: Units, bounds: Bounds, word: LengthWord): Reading<number> {
  const figures = { word: toldKey(`a ${word}`), bounds: tellBounds(bounds, (mm) => writeBound(mm, units)) };
  const [wanted, likeThis] = [toldPart('wanted.bounded', figures), toldPart('wanted.length', figures)];
  if (typeof input !== 'number' && typeof input !== 'string')
    return {
      code: 'wrong-type',
      read: kindOf(input, toldPart('wanted.word', { word: toldKey(`a ${word}`) })),
      wanted: likeThis,
    };
  if (typeof input === 'number' && !Number.isFinite(input))
    return { code: 'not-a-length', read: toldPart('read.not-a-length', {}), wanted: likeThis };
  const reading = typeof input === 'number' ? { mm: toMillimetres(input, units) } : measureLength(input, units);
  if ('read' in reading) return { code: 'not-a-length', read: reading.read, wanted: reading.instead };
  const mm = Math.abs(reading.mm) < LEAST_LENGTH ? 0 : reading.mm;
  return isWithin(mm, bounds) ? { value: mm } : { code: 'out-of-range', read: sizeWord(mm, bounds), wanted };
}

function writeBound(mm: number, units: Units): string {
  if (mm === LONGEST) return '10 m';
  return mm === 0 ? '0' : formatLength(mm, units);
}

/** An angle within bounds in degrees: radians out. */
export function angle(bounds: Bounds): FigureSchema {
  return figure({ form: 'angle' }, (input) => readAngle(input, bounds, 'wanted.angle'));
}

/** How the panel is presented: flat 0, on-edge π/2, or the tilt between them; radians out. */
export function presentation(): FigureSchema {
  return figure({ form: 'presentation' }, (input) => {
    if (input === 'flat') return { value: 0 };
    if (input === 'on-edge') return { value: Math.PI / 2 };
    return readAngle(input, { least: 0, most: 90 }, 'wanted.presentation');
  });
}

function readAngle(input: unknown, bounds: Bounds, sentence: 'wanted.angle' | 'wanted.presentation'): Reading<number> {
  const wanted = toldPart(sentence, { bounds: tellBounds(bounds, (degrees) => `${degrees}°`) });
  if (typeof input !== 'number' && typeof input !== 'string')
    return { code: 'wrong-type', read: kindOf(input, toldPart('wanted.an-angle', {})), wanted };
  const reading = typeof input === 'number' ? { degrees: input } : measureAngle(input);
  if ('read' in reading) {
    const instead = sentence === 'wanted.presentation' ? wanted : reading.instead;
    return { code: 'not-an-angle', read: reading.read, wanted: instead };
  }
  if (!Number.isFinite(reading.degrees))
    return { code: 'not-an-angle', read: toldPart('read.not-an-angle', {}), wanted };
  return isWithin(reading.degrees, bounds)
    ? { value: toRadians(reading.degrees) }
    : { code: 'out-of-range', read: sizeWord(reading.degrees, bounds), wanted };
}

/** A plain number within bounds; `whole` ones only if asked. */
export function number(bounds: Bounds, words: ValueWords): FigureSchema {
  const word = toldKey(words);
  const within = Object.keys(bounds).some((key) => key !== 'whole');
  const wanted = within
    ? toldPart('wanted.bounded', { word, bounds: tellBounds(bounds, String) })
    : toldPart('wanted.word', { word });
  return figure({ form: 'number', ...bounds }, (input) => {
    if (typeof input !== 'number') {
      const figure = figureIn(input, bounds);
      const read = kindOf(input, toldPart('wanted.a-number', {}));
      return { code: 'wrong-type', read, wanted: figure ? toldPart('wanted.alone', { wanted, figure }) : wanted };
    }
    if (!Number.isFinite(input)) return { code: 'not-a-number', read: toldPart('read.not-a-number', {}), wanted };
    if (bounds.whole && !Number.isInteger(input))
      return { code: 'out-of-range', read: toldPart('read.not-whole', {}), wanted };
    return isWithin(input, bounds) ? { value: input } : { code: 'out-of-range', read: sizeWord(input, bounds), wanted };
  });
}

/**
 * A figure written as text, with a decimal comma or with a sign that says no other unit than is asked for, as a bare one; '' where it may be a
 * thousand or one, or is out of bounds.
 */
function figureIn(input: unknown, bounds: Bounds): string {
  const [, figure = ''] =
    (typeof input === 'string' && /^[€$£]?(\d+(?:[.,]\d+)?) ?(?:%|€|rpm|kW|h)?$/.exec(input)) || [];
  const bare = figure.replace(',', '.');
  return /\.\d{3}$/.test(bare) || !isWithin(Number(bare), bounds) ? '' : bare;
}

/** Moisture content, 0 to 30 %, as 8 or "8 %". */
export function moisture(): FigureSchema<Moisture> {
  const bounds = { least: 0, most: 30 };
  const wanted = toldPart('wanted.moisture', {});
  return figure({ form: 'moisture' }, (input) => {
    const percent = readSuffixed(input, /^%$/);
    if (percent === undefined) {
      if (typeof input === 'string') return { code: 'not-a-number', read: toldPart('read.not-moisture', {}), wanted };
      return { code: 'wrong-type', read: kindOf(input, toldPart('wanted.a-moisture', {})), wanted };
    }
    return isWithin(percent, bounds)
      ? { value: percent }
      : { code: 'out-of-range', read: sizeWord(percent, bounds), wanted };
  });
}

/** A temperature: °C out; bare figures are °C, °F on demand. */
export function temperature(): FigureSchema {
  const bounds = { least: -40, most: 100 };
  const wanted = toldPart('wanted.temperature', {});
  return figure({ form: 'temperature' }, (input) => {
    const celsius = readSuffixed(input, /^°?c$/i);
    const fahrenheit = celsius === undefined ? readSuffixed(input, /^°?f$/i) : undefined;
    const value = celsius ?? (fahrenheit === undefined ? undefined : ((fahrenheit - 32) * 5) / 9);
    if (value === undefined)
      return { code: 'wrong-type', read: kindOf(input, toldPart('wanted.a-temperature', {})), wanted };
    return isWithin(value, bounds) ? { value } : { code: 'out-of-range', read: sizeWord(value, bounds), wanted };
  });
}

/** A bare number, or text of a number and a suffix; undefined for anything else. */
function readSuffixed(input: unknown, suffix: RegExp): number | undefined {
  if (typeof input === 'number') return Number.isFinite(input) ? input : undefined;
  if (typeof input !== 'string') return undefined;
  const match = /^([-+−]?\d{1,6}(?:[.,]\d{1,6})?) *(\S*)$/.exec(input.trim());
  if (!match || (match[2] !== '' && !suffix.test(match[2]!))) return undefined;
  return Number(match[1]!.replace('−', '-').replace(',', '.'));
}

/** "a list, not a length": what something is that should have been something else. */
export function kindOf(input: unknown, wanted: Said): Said {
  if (input === null || input === undefined) return toldPart('read.empty', {});
  if (Array.isArray(input)) return toldPart('read.list', { wanted });
  if (typeof input === 'object') return toldPart('read.group', { wanted });
  if (typeof input === 'boolean') return toldPart('read.other', { wanted });
  return toldPart(typeof input === 'number' ? 'read.number' : 'read.words', { wanted });
}
