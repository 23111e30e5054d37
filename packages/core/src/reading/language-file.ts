import { type Catalogue, type ReadLanguage, readLanguage } from '../problem/read-language.ts';
import { sayTerm, type Term } from '../problem/terms.ts';
import { readFileData } from './read.ts';

/**
 * A language from the text of its file, YAML or JSON, checked against `english`, the catalogue of this package unless told.
 *
 * @example readLanguageText('decimal: ","\nsentences: { word.tight: stramm }').language?.decimal // ','
 */
export function readLanguageText(text: string, english?: Catalogue, unheard?: (key: string) => boolean): ReadLanguage {
  const plain = readPlainLines(text);
  if (plain !== null) return readLanguage(plain, english, unheard);
  const { value, faults } = readFileData(text);
  if (faults.length > 0) return { language: null, faults: faults.map(({ message }) => message) };
  return readLanguage(value, english, unheard);
}

/**
 * What stands in a file that has the form of `writeLanguage`, a sentence in quotes on each line: some 2000 of them are read in a
 * thirtieth of the time that YAML takes. Null for any other file, and where a key stands twice.
 */
function readPlainLines(text: string): unknown {
  const head: Record<string, unknown> = {};
  const sentences = new Map<string, unknown>();
  for (const line of text.split(/\r?\n/)) {
    if (/^ *(#|$)/.test(line)) continue;
    const [, indent = '', key = '', quoted] = PLAIN_LINE.exec(line) ?? [];
    const words = quoted === undefined ? undefined : readQuoted(quoted);
    if (line === 'sentences:' && head.sentences === undefined) head.sentences = sentences;
    else if (words === undefined) return null;
    else if (indent === '' && key === 'decimal' && head.decimal === undefined) head.decimal = words;
    else if (indent !== '' && head.sentences !== undefined && !sentences.has(key)) sentences.set(key, words);
    else return null;
  }
  return head.sentences === undefined ? null : { ...head, sentences: Object.fromEntries(sentences) };
}

/** `decimal: "."`, or two spaces further in `key: "sentence"`. */
const PLAIN_LINE = /^( {2})?([\w.-]+(?: [\w.-]+)*): ("(?:[^"\\]|\\.)*")$/;

/** Text in double quotes, which JSON and YAML read alike; undefined where JSON does not. */
function readQuoted(quoted: string): string | undefined {
  try {
    return JSON.parse(quoted) as string;
  } catch {
    return undefined;
  }
}

/** Sentences by their keys as the file of a language, to be translated: British terms stand in the place of those in [ ]. */
export function writeLanguage(words: Catalogue): string {
  const sentences = Object.entries(words).map(
    ([key, words]) =>
      `  ${key}: ${JSON.stringify(words.replace(/\[(\w+)\]/g, (_, term) => sayTerm(term as Term, 'british')))}\n`,
  );
  return `decimal: "."\nsentences:\n${sentences.join('')}`;
}
