import { type Catalogue, type ReadLanguage, readLanguage } from '../problem/read-language.ts';
import { sayTerm, type Term } from '../problem/terms.ts';
import { readFileData } from './read.ts';

/**
 * A language from the text of its file, YAML or JSON, checked against `english`, the catalogue of this package unless told.
 *
 * @example readLanguageText('decimal: ","\nsentences: { word.tight: stramm }').language?.decimal // ','
 */
export function readLanguageText(text: string, english?: Catalogue): ReadLanguage {
  const { value, faults } = readFileData(text);
  if (faults.length > 0) return { language: null, faults: faults.map(({ message }) => message) };
  return readLanguage(value, english);
}

/** Sentences by their keys as the file of a language, to be translated: British terms stand in the place of those in [ ]. */
export function writeLanguage(words: Catalogue): string {
  const sentences = Object.entries(words).map(
    ([key, words]) =>
      `  ${key}: ${JSON.stringify(words.replace(/\[(\w+)\]/g, (_, term) => sayTerm(term as Term, 'british')))}\n`,
  );
  return `decimal: "."\nsentences:\n${sentences.join('')}`;
}
