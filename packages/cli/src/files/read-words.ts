import { findNearest, QUOTE_WORDS, type QuoteWords, readFileData } from '@fielded/core';
import { UsageError } from '../arguments.ts';
import { readText } from './read-text.ts';

/** Figures that a sentence may name: those of the English one. */
const NAMED = /\{(\w+)(?::\w+)?\}/g;

/**
 * The fixed words of a quote, those in a file instead of the English ones: text by key, in YAML or JSON.
 *
 * @throws UsageError for a file that cannot be read, a key that is not known, and a sentence that names a figure it has not.
 */
export function readWords(path: string): QuoteWords {
  const text = readText(path);
  if (typeof text !== 'string') throw new UsageError(`--words ${path}: ${text.refused}. ${text.instead}.`);
  const { value, faults } = readFileData(text);
  if (faults.length > 0) throw new UsageError(`--words ${path}: ${faults[0]!.message}`);
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new UsageError(`--words ${path}: write a key and its words on each line, such as price: Preis.`);
  const words: Record<string, string> = { ...QUOTE_WORDS };
  for (const [key, said] of Object.entries(value)) {
    const english = Object.hasOwn(QUOTE_WORDS, key) ? QUOTE_WORDS[key as keyof QuoteWords] : undefined;
    if (english === undefined) {
      const near = findNearest(key, Object.keys(QUOTE_WORDS));
      throw new UsageError(
        `--words ${path}: ${key} is no key. ${near ? `Did you mean ${near}? ` : ''}fielded quote --print-words lists them.`,
      );
    }
    if (typeof said !== 'string') throw new UsageError(`--words ${path}: ${key} is not text.`);
    const known = [...english.matchAll(NAMED)].map(([, name]) => name);
    const strange = [...said.matchAll(NAMED)].find(([, name]) => !known.includes(name));
    if (strange) {
      const there = known.length > 0 ? `It has ${known.map((name) => `{${name}}`).join(', ')}.` : 'It has none.';
      throw new UsageError(`--words ${path}: ${key} names ${strange[0]}, which this sentence does not have. ${there}`);
    }
    words[key] = said;
  }
  if (!isLanguage(words.language!))
    throw new UsageError(`--words ${path}: language: ${words.language} is no language tag. Write one such as de-DE.`);
  return words as unknown as QuoteWords;
}

function isLanguage(tag: string): boolean {
  try {
    return Intl.getCanonicalLocales(tag).length === 1;
  } catch {
    return false;
  }
}
