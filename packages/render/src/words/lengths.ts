import type { Report } from '@fielded/core';
import { formatLength } from '@fielded/core';

type Units = Report['units'];

/**
 * A length as a dimension shows it: the report's own figure without its unit, which the drawing states once; where a
 * fraction was rounded, the decimal goes under the line.
 *
 * @example figureText(6.4, 'in') // { text: '≈1/4', under: '0.252' }
 */
export function figureText(mm: number, units: Units): { text: string; under: string } {
  const [text = '', under = ''] = formatLength(mm, units, 2).replaceAll(` ${units}`, '').split(' (');
  return { text, under: under.replace(')', '') };
}

/** A length within a sentence, with its unit. */
export function spokenLength(mm: number, units: Units): string {
  return formatLength(mm, units, 2);
}

/** A length in the unit that is not the drawing's own, with its unit, short enough to stand under a dimension line. */
export function otherUnitText(mm: number, units: Units): string {
  const other = units === 'mm' ? 'in' : 'mm';
  return formatLength(mm, other, 2).split(' (')[0]!;
}

/** How the drawing states its units. */
export function unitsNote(units: Units, both: boolean = false): string {
  if (both) return units === 'mm' ? 'millimetres, inches under the line' : 'inches, millimetres under the line';
  return units === 'mm' ? 'millimetres' : 'inches, ≈ where rounded to 1/64';
}

/** A scale as ISO 5455 writes it: enlargement 2:1, reduction 1:5. */
export function scaleText(scale: number): string {
  const short = (value: number) => String(Math.round(value * 100) / 100);
  return scale >= 1 ? `${short(scale)}:1` : `1:${short(1 / scale)}`;
}
