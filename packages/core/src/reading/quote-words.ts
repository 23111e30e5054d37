import { QUOTE_WORDS, type QuoteWords } from '../quote/quote-words.ts';
import { findNearest } from './nearest.ts';
import { readFileData } from './read.ts';

/** Figures that a sentence may name: those of the English one. */
const NAMED = /\{(\w+)(?::\w+)?\}/g;

/** Why a file of fixed words cannot be taken, in a sentence. */
export interface WordsFault {
  readonly fault: string;
}

/**
 * The fixed words of a quote, those in a text (YAML or JSON, words by key) instead of the English ones.
 *
 * Refuses what cannot be read, a key that is not known, a sentence that names a figure it does not have, and a language that is none.
 * `list` starts the sentence that says where all keys stand.
 */
export function readQuoteWords(text: string, list = 'The file of the English words'): QuoteWords | WordsFault {
  const { value, faults } = readFileData(text);
  if (faults.length > 0) return { fault: faults[0]!.message };
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return { fault: 'write a key and its words on each line, such as price: Preis.' };
  const words: Record<string, string> = { ...QUOTE_WORDS };
  for (const [key, said] of Object.entries(value)) {
    const fault = faultOf(key, said, list);
    if (fault !== null) return { fault };
    words[key] = said;
  }
  if (!isLanguage(words.language!))
    return { fault: `language: ${words.language} is no language tag. Write one such as de-DE.` };
  return words as unknown as QuoteWords;
}

/** All fixed words in English, as a file to be translated. */
export function writeQuoteWords(): string {
  return Object.entries(QUOTE_WORDS)
    .map(([key, words]) => `${key}: ${JSON.stringify(words)}\n`)
    .join('');
}

function faultOf(key: string, said: unknown, list: string): string | null {
  const english = Object.hasOwn(QUOTE_WORDS, key) ? QUOTE_WORDS[key as keyof QuoteWords] : undefined;
  if (english === undefined) {
    const near = findNearest(key, Object.keys(QUOTE_WORDS));
    return `${key} is no key. ${near ? `Did you mean ${near}? ` : ''}${list} lists them.`;
  }
  if (typeof said !== 'string') return `${key} is not text.`;
  const known = [...english.matchAll(NAMED)].map(([, name]) => name);
  const strange = [...said.matchAll(NAMED)].find(([, name]) => !known.includes(name));
  if (!strange) return null;
  const there = known.length > 0 ? `It has ${known.map((name) => `{${name}}`).join(', ')}.` : 'It has none.';
  return `${key} names ${strange[0]}, which this sentence does not have. ${there}`;
}

function isLanguage(tag: string): boolean {
  try {
    return Intl.getCanonicalLocales(tag).length === 1;
  } catch {
    return false;
  }
}
