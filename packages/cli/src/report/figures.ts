import { formatLength, formatNumber, type Report } from '@fielded/core';

type Units = Report['units'];

const MM2_PER_IN2 = 645.16;

/** A length for a column of a table, without its unit: mm to 0.01, inches as a whole 64th or to 0.0001. */
export function cellLength(mm: number | null, units: Units): string {
  if (mm === null) return '–';
  if (units === 'mm') return formatFixed(mm, 2);
  const text = formatLength(mm, units);
  return text.startsWith('≈') ? formatFixed((mm * 10) / 254, 4) : text.replace(' in', '');
}

/** An area for a column, in mm² or in². */
export function cellArea(mm2: number, units: Units): string {
  return units === 'mm' ? formatFixed(mm2, 2) : formatFixed(mm2 / MM2_PER_IN2, 4);
}

/** A length beside a label, with its unit; a dash where there is none. */
export function sayLength(mm: number | null, units: Units): string {
  if (mm === null) return '–';
  return units === 'mm' ? `${formatFixed(mm, 2)} mm` : formatLength(mm, units);
}

/** Rounded as every figure is, with its noughts kept, so that columns line up at the point. */
function formatFixed(value: number, digits: number): string {
  const [whole = '', part = ''] = formatNumber(value, digits).split('.');
  return `${whole}.${part.padEnd(digits, '0')}`;
}
