import { parseLength, type Units } from '@fielded/core';
import { sayMisread } from '../words/say-misread.ts';

/** What was typed for a length: mm and how the job file keeps it, what is wrong with it, or a sum that has to be worked out. */
export type Entry =
  | { readonly kind: 'length'; readonly mm: number; readonly written: string | number }
  | { readonly kind: 'fault'; readonly message: string }
  | { readonly kind: 'sum' };

/**
 * Reads a length as typed while lengths are shown in `shown`, to be kept in a job file of `file`'s unit.
 *
 * Plain figures in the file's own unit are kept as numbers, all else as text with its unit, as typed. A text with a sign
 * between two figures, or brackets, is a sum.
 */
export function readEntry(text: string, shown: Units, file: Units): Entry {
  const read = parseLength(text, shown);
  if ('mm' in read) return { kind: 'length', mm: read.mm, written: writeTyped(text.trim(), shown, file) };
  if (isSum(text)) return { kind: 'sum' };
  if (text.trim() === '') return { kind: 'fault', message: 'Write a length, such as 19 mm or 3/4 in.' };
  return { kind: 'fault', message: sayMisread(text.trim(), read) };
}

/** A sum has two figures or more with a sign between, or brackets; a fraction by itself is none. */
function isSum(text: string): boolean {
  return /\d.*[-+*×·÷/−–(].*\d/.test(text) && !/--|^\s*(?:\d+[- ])?\d+\s*\/\s*\d+\s*$/.test(text);
}

const PLAIN = /^[+]?\d*[.,]?\d+$/;

function writeTyped(text: string, shown: Units, file: Units): string | number {
  if (PLAIN.test(text)) {
    const value = Number(text.replace(',', '.'));
    return shown === file && Number.isFinite(value) ? value : `${value} ${shown}`;
  }
  if (/[a-z"'″′”’]/i.test(text)) return text;
  // A fraction without its unit: the file may be of another unit than what is shown.
  return shown === file ? text : `${text} ${shown}`;
}
