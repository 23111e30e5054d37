import { formatNumber, type Units } from '@fielded/core';
import { writeLength } from '../job/write-length.ts';

/**
 * A length as the text of its field, to be typed over: without its unit; reading it gives the same length.
 *
 * @example entryText(19.05, 'in') // '3/4'
 */
export function entryText(mm: number, shown: Units): string {
  if (shown === 'mm') return formatNumber(mm, 3).replace('−', '-');
  return String(writeLength(mm, 'in', 'in'));
}
