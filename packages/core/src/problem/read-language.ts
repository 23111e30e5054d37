import { ALL_ENGLISH } from './all-english.ts';
import type { Language } from './language.ts';

/** A language, or everything that is wrong with its file, a line each. */
export type ReadLanguage =
  | { readonly language: Language; readonly faults: readonly [] }
  | { readonly language: null; readonly faults: readonly string[] };

/** Sentences by their keys. */
export type Catalogue = Readonly<Record<string, string>>;

/**
 * A language from the content of its file: `decimal`, "." or ",", and `sentences` by the keys of the English catalogue: `english`, that of this
 * package unless told.
 *
 * Every sentence is checked: its key is known, and it names only figures that the English one names: a number as any kind of number,
 * other sentences as what they are. A sentence that is not there is said in English. Terms in [ ] are English: another language writes its own.
 * Keys that are `unheard`, of sentences that will not be said, are let pass.
 *
 * @example readLanguage({ decimal: ',', sentences: { 'word.tight': 'stramm' } }).faults // []
 */
export function readLanguage(
  value: unknown,
  english: Catalogue = ALL_ENGLISH,
  unheard: (key: string) => boolean = () => false,
): ReadLanguage {
  const { decimal, sentences } = (typeof value === 'object' && value !== null ? value : {}) as Record<string, unknown>;
  const faults: string[] = [];
  if (decimal !== '.' && decimal !== ',') faults.push('decimal is missing: write "." or ","');
  if (typeof sentences !== 'object' || sentences === null || Array.isArray(sentences))
    return { language: null, faults: [...faults, 'sentences is missing: write a group of sentences by their keys'] };
  for (const [key, sentence] of Object.entries(sentences))
    if (!unheard(key)) faults.push(...faultsOf(key, sentence, english));
  if (faults.length > 0) return { language: null, faults };
  return {
    language: { decimal: decimal as Language['decimal'], sentences: sentences as Language['sentences'] },
    faults: [],
  };
}

function faultsOf(key: string, sentence: unknown, english: Catalogue): string[] {
  if (!Object.hasOwn(english, key)) return [`${key} is no sentence of the catalogue`];
  if (typeof sentence !== 'string' || sentence.trim() === '') return [`${key} says nothing: write a sentence`];
  const terms = /\[\w+\]/.test(sentence) ? [`${key} holds a term in [ ]: write the word itself`] : [];
  return sentence.includes('{') ? [...strangeFigures(key, sentence, english[key]!), ...terms] : terms;
}

/** What is wrong with the figures that a sentence names: the English one names all that there are. */
function strangeFigures(key: string, sentence: string, english: string): string[] {
  const known = placeholders(english);
  const kinds = known.map(kindOf);
  const strange = placeholders(sentence).filter((each) => !kinds.includes(kindOf(each)));
  return strange.map((each) => `${key} names ${each}, which is not given: it has ${known.join(', ') || 'none'}`);
}

/** Kinds of a figure that is a plain number: one may be written as another, more or less fine. */
const NUMBERS = /:(?:length|coarse|degrees|percent|area|count|grouped|share|number)\}$/;

/** A placeholder with its kind, all numbers alike, and a place of the job file as any other word. */
function kindOf(placeholder: string): string {
  return placeholder.replace(NUMBERS, ':number}').replace(':path}', '}');
}

function placeholders(sentence: string): string[] {
  return sentence.match(/\{\w+(?::\w+)?\}/g) ?? [];
}
