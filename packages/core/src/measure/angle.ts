import type { Misreading } from './figure.ts';
import { readFigure } from './figure.ts';
import { plainNotation } from './notation.ts';

const EXAMPLE = 'degrees, such as 18 or 18°';

/**
 * An angle as a maker writes it, in degrees: `18`, `18°`, `18 deg`, `17.5 degrees`, `17,5`; a leading minus is read.
 * Anything else comes back as what was read and what to write instead.
 *
 * @example parseAngle('18 deg') // { degrees: 18 }
 */
export function parseAngle(text: string): { readonly degrees: number } | Misreading {
  if (text.length > 60) return { read: `${text.length} characters long`, instead: EXAMPLE };
  const plain = plainNotation(text);
  if (plain === '') return { read: 'empty', instead: EXAMPLE };
  if (!/\d/.test(plain)) return { read: 'not an angle', instead: EXAMPLE };
  const sign = /^[+-]/.exec(plain)?.[0] ?? '';
  const figure = readFigure(plain.slice(sign.length).trim());
  if ('read' in figure) return { read: figure.read, instead: EXAMPLE };
  if (!['', '°', 'deg', 'degs', 'degree', 'degrees'].includes(figure.rest))
    return { read: `in "${figure.rest}", which is not a unit of angle`, instead: EXAMPLE };
  return { degrees: sign === '-' && figure.value !== 0 ? -figure.value : figure.value };
}

/** Degrees as the engine holds them. */
export function toRadians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

/** Angles of the engine, radians, as a maker reads them. */
export function toDegrees(radians: number): number {
  return (radians * 180) / Math.PI;
}
