import { formatLength, formatNumber } from '../measure/format.ts';
import type { Units } from '../measure/length.ts';
import { type ProblemCode, SEVERITIES } from './codes.ts';
import { ENGLISH } from './english.ts';
import type { Figures, Problem } from './problem.ts';
import { TERMS, type Term, type Terms } from './terms.ts';

type Sentences = typeof ENGLISH;
export type SentenceKey = keyof Sentences;

/** Code of a sentence: its key up to the first full stop. */
type CodeOf<K extends string> = K extends `${infer Code}.${string}` ? Code : K;

/** Kind of figure that a placeholder holds. */
type KindOf<P extends string> = P extends `${string}:${string}` ? number : string;
type NameOf<P extends string> = P extends `${infer Name}:${string}` ? Name : P;

/** The figures that a sentence names, with their types, read off the sentence itself. */
export type FiguresOf<S extends string> = S extends `${string}{${infer P}}${infer Rest}`
  ? { readonly [N in NameOf<P>]: KindOf<P> } & FiguresOf<Rest>
  : unknown;

/** How the words are to be: lengths in the job's unit, terms of one side of the Atlantic (by default those of the unit). */
export interface Voice {
  readonly units: Units;
  readonly terms?: Terms;
}

/** A language: its sentences by key, and the sign that parts whole numbers from decimals. */
export interface Language {
  readonly sentences: Readonly<Record<string, string>>;
  readonly decimal: '.' | ',';
}

const IN_ENGLISH: Language = { sentences: ENGLISH, decimal: '.' };

/**
 * A problem in words, with the figures it names kept beside them: lengths mm, angles degrees.
 *
 * @example sayProblem('no-tongue', 'cuts', { where: '0 mm to 4 mm' }, { units: 'mm' }).code // 'no-tongue'
 */
export function sayProblem<K extends SentenceKey & (ProblemCode | `${ProblemCode}.${string}`)>(
  sentence: K,
  at: string,
  figures: FiguresOf<Sentences[K]>,
  voice: Voice,
): Problem {
  const code = sentence.split('.')[0] as CodeOf<K> & ProblemCode;
  const named = figures as Figures;
  const message = phrase(ENGLISH[sentence], named, voice, IN_ENGLISH);
  return { severity: SEVERITIES[code], code, at, message, sentence, figures: named };
}

/**
 * The same problem in another language; its own words where that language has no sentence for it.
 */
export function translate(problem: Problem, voice: Voice, language: Language): Problem {
  const sentence = language.sentences[problem.sentence ?? ''];
  if (sentence === undefined) return problem;
  return { ...problem, message: phrase(sentence, problem.figures ?? {}, voice, language) };
}

/**
 * A sentence with its figures and terms written in.
 *
 * @throws RangeError for a figure or a term that is not known.
 */
export function phrase(sentence: string, figures: Figures, voice: Voice, language: Language): string {
  return sentence
    .replace(/\{(\w+)(?::(\w+))?\}/g, (_, name: string, kind: string | undefined) => {
      const value = figures[name];
      if (value === undefined) throw new RangeError(`the sentence names {${name}}, which is not given`);
      return typeof value === 'string' ? value : withDecimal(show(value, kind ?? 'number', voice), language);
    })
    .replace(/\[(\w+)\]/g, (_, term: string) => {
      const both = TERMS[term as Term];
      if (both === undefined) throw new RangeError(`the sentence names [${term}], which is no term`);
      return both[voice.terms ?? (voice.units === 'in' ? 'american' : 'british')];
    });
}

function show(value: number, kind: string, { units }: Voice): string {
  switch (kind) {
    case 'length':
      return formatLength(value, units);
    case 'degrees':
      return `${formatNumber(value, 1)}°`;
    case 'percent':
      return `${formatNumber(value, 1)} %`;
    case 'number':
      return formatNumber(value, 2);
    default:
      throw new RangeError(`a figure cannot be written as ${kind}`);
  }
}

function withDecimal(words: string, { decimal }: Language): string {
  return decimal === '.' ? words : words.replace(/(\d)\.(\d)/g, `$1${decimal}$2`);
}
