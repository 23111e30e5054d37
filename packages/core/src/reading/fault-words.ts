import type { Units } from '../measure/length.ts';
import { IN_ENGLISH, type Voice } from '../problem/language.ts';
import { sayIn } from '../problem/phrase.ts';
import type { Fault, Figures, Problem } from '../problem/problem.ts';
import { codeOfFault, FAULT_ENGLISH } from '../problem/say-fault.ts';
import { LONGEST_FAULT, MOST_FAULTS } from './limits.ts';
import type { TextFault } from './tree.ts';

/** Faults in the order of the file, as they are reported. */
export function inOrder(faults: readonly TextFault[], file: string, units: Units = 'mm'): Fault[] {
  return [...faults]
    .sort((one, other) => one.line - other.line || one.column - other.column)
    .slice(0, MOST_FAULTS)
    .map(({ sentence, remedy, figures: told, at, line, column, text, english = FAULT_ENGLISH }) => {
      const figures = shortenAll({ ...told, at });
      const further = [{ sentence: remedy, figures }];
      const said = { severity: 'error', code: codeOfFault(sentence), at, sentence, figures, further } as const;
      const expected = withoutStop(sayIn(further[0]!, { units }, { language: IN_ENGLISH, english }));
      const message = sayWith(said, { units }, english);
      return { ...said, message, file, line, column, received: text, expected };
    });
}

/**
 * What is wrong with a file and what to do about it, in the words of a voice: another language, or other names for the places of
 * the file.
 */
export function sayFault(fault: SaidFault & { readonly message: string }, voice: Voice): string {
  const { sentence = '', message } = fault;
  // What is wrong with the text itself names no place, and stays as it was said unless the language has it.
  const known = Object.hasOwn(voice.language?.sentences ?? {}, sentence) || Object.hasOwn(FAULT_ENGLISH, sentence);
  return known ? sayWith(fault, voice, FAULT_ENGLISH) : message;
}

type SaidFault = Pick<Problem, 'sentence' | 'figures' | 'further'>;

function sayWith(
  { sentence, figures, further }: SaidFault,
  voice: Voice,
  english: Readonly<Record<string, string>>,
): string {
  const speech = { language: voice.language ?? IN_ENGLISH, english };
  return [{ sentence: sentence ?? '', figures: figures ?? {} }, ...(further ?? [])]
    .map((each) => `${shorten(withoutStop(sayIn(each, voice, speech)))}.`)
    .join(' ');
}

function withoutStop(words: string): string {
  return words.replace(/\.$/, '');
}

/** Shortens a message: names and keys in a file may be as long as the file. */
function shorten(words: string): string {
  return words.length > LONGEST_FAULT ? `${words.slice(0, LONGEST_FAULT - 1)}…` : words;
}

function shortenAll(figures: Figures): Figures {
  return Object.fromEntries(
    Object.entries(figures).map(([name, value]) => {
      if (typeof value === 'string') return [name, shorten(value)];
      const part = typeof value === 'object' && 'sentence' in value ? value : null;
      return [name, part === null ? value : { ...part, figures: shortenAll(part.figures) }];
    }),
  );
}
