import { type QuoteWords, readQuoteWords } from '@fielded/core';
import { inEnglish, UsageError } from '../usage-error.ts';
import { readTextFile } from './read-text.ts';

/**
 * The fixed words of a quote, those in a file instead of the English ones: text by key, in YAML or JSON.
 *
 * @throws UsageError for a file that cannot be read or taken.
 */
export function readWords(path: string): QuoteWords {
  const text = readTextFile(path);
  if (typeof text !== 'string') throw new UsageError(inEnglish(`--words ${path}: ${text.refused}. ${text.instead}.`));
  const words = readQuoteWords(text, 'fielded quote --print-words');
  if (!('fault' in words)) return words;
  throw new UsageError(inEnglish(`--words ${path}: ${words.fault}`));
}
