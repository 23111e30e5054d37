import { parseLength, type Units } from '@fielded/core';
import { sayMisread } from '../words/say-misread.ts';

/** What was typed for a length: its mm and how the job file keeps it, what is wrong with it, or that it is a sum still to be computed. */
export type Entry =
  | { readonly kind: 'length'; readonly mm: number; readonly written: string | number }
  | { readonly kind: 'fault'; readonly message: string }
  | { readonly kind: 'sum' };

/**
 * Reads a length as typed while lengths are shown in `shown`, to be kept in a job file of `file`'s unit.
 *
 * Plain figures in the file's own unit are kept as numbers, all else as text with its unit, as typed.
 */
export function readEntry(text: string, shown: Units, file: Units): Entry {
  const read = parseLength(text, shown);
  if ('mm' in read) return { kind: 'length', mm: read.mm, written: writeTyped(text.trim(), shown, file) };
  if (/\d.*[-+*×·÷/−–(]\s*$/.test(text))
    return { kind: 'fault', message: `${text.trim()} is not finished: a figure is to come.` };
  if (isSum(text)) return { kind: 'sum' };
  if (text.trim() === '') return { kind: 'fault', message: 'Write a length, such as 19 mm or 3/4 in.' };
  return { kind: 'fault', message: sayMisread(text.trim(), read) };
}

/** Whether a text is a sum: two figures or more with a sign or a bracket between them. A fraction by itself is none. */
function isSum(text: string): boolean {
  return /\d.*[-+*×·÷/−–(].*\d/.test(text) && !/--|^\s*(?:\d+[- ])?\d+\s*\/\s*\d+\s*$/.test(text);
}

const PLAIN = /^[+]?\d*[.,]?\d+$/;

/** What was typed, as the job file keeps it. */
function writeTyped(text: string, shown: Units, file: Units): string | number {
  if (PLAIN.test(text)) {
    const value = Number(text.replace(',', '.'));
    return shown === file && Number.isFinite(value) ? value : `${value} ${shown}`;
  }
  if (/[a-z"'″′”’]/i.test(text)) return text;
  // A fraction without its unit: the file may be of another unit than what is shown.
  return shown === file ? text : `${text} ${shown}`;
}
