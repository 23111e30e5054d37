import { formatLength, formatNumber, type Voice } from '@fielded/core';

/** How figures are written: in a unit, and with the decimal sign of a language. */
export type Shown = Pick<Voice, 'units' | 'language'>;

const MM2_PER_IN2 = 645.16;

/** A length for a column of a table, without its unit: mm to 0.01, inches as a whole 64th or to 0.0001. */
export function cellLength(mm: number | null, { units, language }: Shown): string {
  if (mm === null) return '–';
  if (units === 'mm') return formatFixed(mm, 2, language);
  const text = formatLength(mm, units);
  return text.startsWith('≈') ? formatFixed((mm * 10) / 254, 4, language) : text.replace(' in', '');
}

/** An area for a column, in mm² or in². */
export function cellArea(mm2: number, { units, language }: Shown): string {
  return units === 'mm' ? formatFixed(mm2, 2, language) : formatFixed(mm2 / MM2_PER_IN2, 4, language);
}

/** A length beside a label, with its unit; a dash where there is none. */
export function sayLength(mm: number | null, { units, language }: Shown): string {
  if (mm === null) return '–';
  return units === 'mm' ? `${formatFixed(mm, 2, language)} mm` : sayFigure(formatLength(mm, units), language);
}

/** A figure in words with the decimal sign of a language. */
export function sayFigure(figure: string, language: Shown['language']): string {
  return language?.decimal === ',' ? figure.replace('.', ',') : figure;
}

/** Rounded like every figure, but with trailing zeros, so that columns line up at the decimal sign. */
function formatFixed(value: number, digits: number, language: Shown['language']): string {
  const [whole = '', part = ''] = formatNumber(value, digits).split('.');
  return `${whole}${language?.decimal ?? '.'}${part.padEnd(digits, '0')}`;
}
