import { readFigure } from './figure.ts';
import { type Misread, type Misreading, misread, sayMisreading } from './misread.ts';
import { plainNotation } from './notation.ts';

/**
 * An angle as a maker writes it, in degrees: `18`, `18°`, `18 deg`, `17.5 degrees`, `17,5`; a leading minus is read.
 * Anything else comes back as what was read and what to write instead.
 *
 * @example parseAngle('18 deg') // { degrees: 18 }
 */
export function parseAngle(text: string): { readonly degrees: number } | Misreading {
  const reading = measureAngle(text);
  return 'degrees' in reading ? reading : sayMisreading(reading);
}

/** The same with what was read not yet in words. */
export function measureAngle(text: string): { readonly degrees: number } | Misread {
  if (text.length > 60) return misread('too-long', 'angle', { characters: String(text.length) });
  const plain = plainNotation(text);
  if (plain === '') return misread('empty', 'angle');
  if (!/\d/.test(plain)) return misread('not-an-angle', 'angle');
  const sign = /^[+-]/.exec(plain)?.[0] ?? '';
  const figure = readFigure(plain.slice(sign.length).trim());
  if ('read' in figure) return { ...figure, instead: misread('not-an-angle', 'angle').instead };
  if (!['', '°', 'deg', 'degs', 'degree', 'degrees'].includes(figure.rest))
    return misread('angle-unit', 'angle', { unit: figure.rest });
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
