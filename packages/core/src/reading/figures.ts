import * as v from 'valibot';
import type { Moisture } from '../job/job.ts';
import { parseAngle, toRadians } from '../measure/angle.ts';
import { formatLength } from '../measure/format.ts';
import { LONGEST, parseLength, toMillimetres, type Units } from '../measure/length.ts';
import type { FaultCode } from '../problem/codes.ts';

/** What a figure is, so that the published JSON Schema can say how it may be written. */
export type FigureForm = 'length' | 'angle' | 'presentation' | 'moisture' | 'temperature' | 'number' | 'text';

/** Which values are accepted: from `least`, or more than `above`, up to `most`. */
export interface Bounds {
  readonly least?: number;
  readonly above?: number;
  readonly most?: number;
  readonly whole?: boolean;
}

/** A schema of ours: any input, a figure out. */
export type Figure<T = number> = v.GenericSchema<unknown, T>;

/** What is wrong with a figure: the fault's code, what it is (after "is"), and what to write. */
interface FigureFault {
  readonly code: FaultCode;
  readonly read: string;
  readonly instead: string;
}

type About = { readonly form: FigureForm } & Pick<Bounds, 'least' | 'above' | 'most' | 'whole'>;

type Reading<T> = { readonly value: T } | FigureFault;

/**
 * A figure read from what the file holds by `read`; its fault travels in the issue, to be put into words with its
 * place. The code stands in the issue's `received`, since what was received is known from the text itself. `about`
 * tells the published JSON Schema what may be written.
 */
function figure<T>(about: About, read: (input: unknown) => Reading<T>): Figure<T> {
  return v.pipe(
    v.any(),
    v.rawTransform<unknown, T>(({ dataset, addIssue, NEVER }) => {
      const reading = read(dataset.value);
      if ('value' in reading) return reading.value;
      addIssue({ message: reading.read, expected: reading.instead, received: reading.code });
      return NEVER;
    }),
    v.metadata({ ...about }),
  );
}

/** Less than a millionth of a millimetre is nothing: no radius then grows past what a number holds. */
const LEAST_LENGTH = 1e-6;

/** A length: mm out. `word` names it in what to write ("a thickness above 0"). */
export function length(units: Units, bounds: Bounds, word = 'length'): Figure {
  return figure({ form: 'length' }, (input) => readLength(input, units, { most: LONGEST, ...bounds }, word));
}

/** A default of so many mm as a file would write it: the same length in a file of inches. */
export function millimetres(mm: number): string {
  return `${mm} mm`;
}

function readLength(input: unknown, units: Units, bounds: Bounds, word: string): Reading<number> {
  const wanted = `a ${word} ${boundsInWords(bounds, (mm) => (mm === LONGEST ? '10 m' : mm === 0 ? '0' : formatLength(mm, units)))}`;
  if (typeof input !== 'number' && typeof input !== 'string')
    return { code: 'wrong-type', read: kindOf(input, `a ${word}`), instead: `${wanted}, such as 19 mm or 3/4 in` };
  if (typeof input === 'number' && !Number.isFinite(input))
    return { code: 'not-a-length', read: 'not a length', instead: `${wanted}, such as 19 mm or 3/4 in` };
  const reading = typeof input === 'number' ? { mm: toMillimetres(input, units) } : parseLength(input, units);
  if ('read' in reading) return { code: 'not-a-length', ...reading };
  const mm = Math.abs(reading.mm) < LEAST_LENGTH ? 0 : reading.mm;
  return isWithin(mm, bounds) ? { value: mm } : { code: 'out-of-range', read: sizeWord(mm, bounds), instead: wanted };
}

/** An angle within bounds in degrees: radians out. */
export function angle(bounds: Bounds): Figure {
  return figure({ form: 'angle' }, (input) => readAngle(input, bounds, ''));
}

/** How the panel is presented: flat 0, on-edge π/2, or the tilt between them; radians out. */
export function presentation(): Figure {
  return figure({ form: 'presentation' }, (input) => {
    if (input === 'flat') return { value: 0 };
    if (input === 'on-edge') return { value: Math.PI / 2 };
    return readAngle(input, { least: 0, most: 90 }, 'flat, on-edge, or ');
  });
}

function readAngle(input: unknown, bounds: Bounds, other: string): Reading<number> {
  const wanted = `${other}an angle ${boundsInWords(bounds, (degrees) => `${degrees}°`)}`;
  if (typeof input !== 'number' && typeof input !== 'string')
    return { code: 'wrong-type', read: kindOf(input, 'an angle'), instead: wanted };
  const reading = typeof input === 'number' ? { degrees: input } : parseAngle(input);
  if ('read' in reading)
    return { code: 'not-an-angle', read: reading.read, instead: other === '' ? reading.instead : wanted };
  if (!Number.isFinite(reading.degrees)) return { code: 'not-an-angle', read: 'not an angle', instead: wanted };
  return isWithin(reading.degrees, bounds)
    ? { value: toRadians(reading.degrees) }
    : { code: 'out-of-range', read: sizeWord(reading.degrees, bounds), instead: wanted };
}

/** A plain number within bounds; `whole` ones only if asked. */
export function number(bounds: Bounds, word: string): Figure {
  const wanted = `${word} ${boundsInWords(bounds, String)}`;
  return figure({ form: 'number', ...bounds }, (input) => {
    if (typeof input !== 'number') return { code: 'wrong-type', read: kindOf(input, 'a number'), instead: wanted };
    if (!Number.isFinite(input)) return { code: 'not-a-number', read: 'not a number', instead: wanted };
    if (bounds.whole && !Number.isInteger(input))
      return { code: 'out-of-range', read: 'not a whole number', instead: wanted };
    return isWithin(input, bounds)
      ? { value: input }
      : { code: 'out-of-range', read: sizeWord(input, bounds), instead: wanted };
  });
}

/** Moisture content, 0 to 30 %, as 8 or "8 %". */
export function moisture(): Figure<Moisture> {
  const wanted = 'a moisture content from 0 to 30 %, or { temperature: 20, humidity: 45 } for the air it settles in';
  return figure({ form: 'moisture' }, (input) => {
    const percent = readSuffixed(input, /^%$/);
    if (percent === undefined) {
      if (typeof input === 'string') return { code: 'not-a-number', read: 'not a moisture content', instead: wanted };
      return { code: 'wrong-type', read: kindOf(input, 'a moisture content'), instead: wanted };
    }
    return isWithin(percent, { least: 0, most: 30 })
      ? { value: percent }
      : { code: 'out-of-range', read: sizeWord(percent, { least: 0, most: 30 }), instead: wanted };
  });
}

/** A temperature: °C out; bare figures are °C, °F on demand. */
export function temperature(): Figure {
  const bounds = { least: -40, most: 100 };
  const wanted = 'a temperature from -40 to 100 °C, such as 20 or 68 °F';
  return figure({ form: 'temperature' }, (input) => {
    const celsius = readSuffixed(input, /^°?c$/i);
    const fahrenheit = celsius === undefined ? readSuffixed(input, /^°?f$/i) : undefined;
    const value = celsius ?? (fahrenheit === undefined ? undefined : ((fahrenheit - 32) * 5) / 9);
    if (value === undefined) return { code: 'wrong-type', read: kindOf(input, 'a temperature'), instead: wanted };
    return isWithin(value, bounds)
      ? { value }
      : { code: 'out-of-range', read: sizeWord(value, bounds), instead: wanted };
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

function isWithin(value: number, { least, above, most }: Bounds): boolean {
  return !(value < (least ?? -Infinity) || value <= (above ?? -Infinity) || value > (most ?? Infinity));
}

function sizeWord(value: number, { least, above }: Bounds): string {
  return value < (least ?? -Infinity) || value <= (above ?? -Infinity) ? 'too small' : 'too big';
}

function boundsInWords({ least, above, most }: Bounds, write: (value: number) => string): string {
  const to = most === undefined ? '' : write(most);
  if (above !== undefined) return `above ${write(above)}${to === '' ? '' : `, at most ${to}`}`;
  if (least !== undefined) return to === '' ? `of ${write(least)} or more` : `from ${write(least)} to ${to}`;
  return to === '' ? '' : `of at most ${to}`;
}

/** "a list, not a length": what something is that should have been something else. */
export function kindOf(input: unknown, wanted: string): string {
  if (input === null || input === undefined) return 'empty';
  if (Array.isArray(input)) return `a list, not ${wanted}`;
  if (typeof input === 'object') return `a group of keys, not ${wanted}`;
  if (typeof input === 'boolean') return `not ${wanted}`;
  return typeof input === 'number' ? `a number, not ${wanted}` : `text, not ${wanted}`;
}

/** A line of text of up to `most` characters; a whole number stands for its digits, since makers number their doors. */
export function text(word: string, most = 200): Figure<string> {
  const wanted = `${word}, up to ${most} characters, in quotes if in doubt`;
  return figure({ form: 'text' }, (input) => {
    const line = typeof input === 'number' && Number.isInteger(input) ? String(input) : input;
    if (typeof line !== 'string') return { code: 'wrong-type', read: kindOf(input, word), instead: wanted };
    if (line.trim() === '') return { code: 'empty-value', read: 'empty', instead: wanted };
    if (line.length > most) return { code: 'out-of-range', read: `${line.length} characters long`, instead: wanted };
    return { value: line };
  });
}

/** A currency by its ISO 4217 code: three capital letters. */
export function currency(): Figure<string> {
  const wanted = 'the ISO 4217 code of a currency, such as EUR or USD';
  return figure({ form: 'text' }, (input) => {
    if (typeof input !== 'string') return { code: 'wrong-type', read: kindOf(input, 'a currency'), instead: wanted };
    return /^[A-Z]{3}$/.test(input)
      ? { value: input }
      : { code: 'unknown-choice', read: 'not a currency code', instead: wanted };
  });
}

/** SVG path data, still as text: what it draws is read with the profile. */
export function path(): Figure<string> {
  const wanted = 'SVG path data from the edge to the face, such as "M 0 9 H 12 L 30 2 V 0"';
  return figure({ form: 'text' }, (input) =>
    typeof input === 'string'
      ? { value: input }
      : { code: 'wrong-type', read: kindOf(input, 'SVG path data'), instead: wanted },
  );
}
