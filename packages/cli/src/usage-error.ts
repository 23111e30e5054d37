import type { FiguresOf, Said, Voice } from '@fielded/core';
import { type LineKey, type Sentences, say } from './words/say.ts';

/** A sentence that waits for the language it is to be said in. */
export type Unsaid = (voice: Voice) => string;

/** A sentence of the catalogue, to be said later. */
export function unsaid<K extends LineKey>(line: K, figures: FiguresOf<Sentences[K]>): Unsaid {
  return (voice) => say(line, figures, voice);
}

/** What another part refused in words of its own, which stay English. */
export function inEnglish(text: string): Unsaid {
  return () => text;
}

/**
 * A wrong use of the command, as the sentences to print; those that are null are left out. Thrown only inside the command line, and said
 * in `main`, which knows the language.
 */
export class UsageError extends Error {
  readonly #sentences: readonly Unsaid[];

  constructor(...sentences: readonly (Unsaid | null)[]) {
    const all = sentences.filter((each) => each !== null);
    super(all.map((each) => each({ units: 'mm' })).join(' '));
    this.#sentences = all;
  }

  say(voice: Voice): string {
    return this.#sentences.map((each) => each(voice)).join(' ');
  }
}

/** "See fielded help check." */
export function seeHelp(command: string): Unsaid {
  return unsaid('print.usage.see-command', { command });
}

/** "Did you mean raise?"; null where nothing is near. */
export function didYouMean(name: string | undefined): Unsaid | null {
  return name === undefined ? null : unsaid('print.usage.near', { name });
}

/** "There are a, b and c." */
export function thereAre(names: readonly string[]): Unsaid {
  const [name = ''] = names;
  return names.length === 1
    ? unsaid('print.usage.known.one', { name })
    : unsaid('print.usage.known', { names: listed(names, 'and') });
}

/** "a, b and c", as it stands in a sentence. */
export function listed(words: readonly string[], last: 'and' | 'or'): Said {
  const other = words.at(-1) ?? '';
  if (words.length < 2) return { sentence: 'print.usage.alone', figures: { one: other } };
  return { sentence: `print.usage.${last}`, figures: { one: words.slice(0, -1).join(', '), other } };
}
