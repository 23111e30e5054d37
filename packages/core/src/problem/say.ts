import { type ProblemCode, SEVERITIES } from './codes.ts';
import type { ENGLISH } from './english.ts';
import { IN_ENGLISH, type Language, type Voice } from './language.ts';
import { sayIn } from './phrase.ts';
import type { Advice, Figures, Problem, Said, Spans } from './problem.ts';

export type { Language, Voice } from './language.ts';

type Sentences = typeof ENGLISH;
export type SentenceKey = keyof Sentences;

/** Code of a sentence: its key up to the first full stop. */
type CodeOf<K extends string> = K extends `${infer Code}.${string}` ? Code : K;

/** Kind of figure that a placeholder holds. */
type KindOf<P extends string> = P extends `${string}:spans`
  ? Spans
  : P extends `${string}:list`
    ? readonly Said[]
    : P extends `${string}:said`
      ? Said
      : P extends `${string}:${string}`
        ? number
        : string;
type NameOf<P extends string> = P extends `${infer Name}:${string}` ? Name : P;

/** The figures that a sentence names, with their types, read off the sentence itself. */
export type FiguresOf<S extends string> = S extends `${string}{${infer P}}${infer Rest}`
  ? { readonly [N in NameOf<P>]: KindOf<P> } & FiguresOf<Rest>
  : unknown;

/** What a problem is about, what else it says, and what would put it right. */
export type More = Pick<Problem, 'further' | 'about' | 'advice'>;

/**
 * A problem in words, with the figures it names kept beside them: lengths mm, angles degrees.
 *
 * @example sayProblem('no-tongue', 'cuts', { where: [[0, 4]] }, { units: 'mm' }).code // 'no-tongue'
 */
export function sayProblem<K extends SentenceKey & (ProblemCode | `${ProblemCode}.${string}`)>(
  sentence: K,
  at: string,
  figures: FiguresOf<Sentences[K]>,
  voice: Voice,
  more: More = {},
): Problem {
  const code = sentence.split('.')[0] as CodeOf<K> & ProblemCode;
  const problem = { severity: SEVERITIES[code], code, at, sentence, figures: figures as Figures, ...more };
  return { ...problem, message: wordsOf(problem, voice, voice.language ?? IN_ENGLISH) };
}

/** A sentence with its figures, to be said later or in another sentence. */
export function told<K extends SentenceKey>(sentence: K, figures: FiguresOf<Sentences[K]>): Said {
  return { sentence, figures: figures as Figures };
}

/** A sentence of the catalogue in words. */
export function say<K extends SentenceKey>(sentence: K, figures: FiguresOf<Sentences[K]>, voice: Voice): string {
  return sayIn(told(sentence, figures), voice, voice.language ?? IN_ENGLISH);
}

/** Advice in words, with the values of the job file that follow it. */
export function advise<K extends SentenceKey>(
  sentence: K,
  figures: FiguresOf<Sentences[K]>,
  writes: Advice['writes'],
  voice: Voice,
): Advice {
  return { ...told(sentence, figures), message: say(sentence, figures, voice), writes };
}

/** The same problem with what would put it right; `further` is said before it. */
export function withAdvice(
  problem: Problem,
  advice: readonly Advice[],
  further: readonly Said[],
  voice: Voice,
): Problem {
  const all = { ...problem, further: [...(problem.further ?? []), ...further], advice };
  return { ...all, message: wordsOf(all, voice, voice.language ?? IN_ENGLISH) };
}

/** The same problem in another language; in English what that language has no sentence for. */
export function translate(problem: Problem, voice: Voice, language: Language): Problem {
  if (problem.sentence === undefined) return problem;
  const advice = problem.advice?.map((each) => ({ ...each, message: sayIn(each, voice, language) }));
  return { ...problem, ...(advice && { advice }), message: wordsOf(problem, voice, language) };
}

/** A problem's whole message: its sentence, what else it says, and its advice. */
function wordsOf(problem: Omit<Problem, 'message'>, voice: Voice, language: Language): string {
  const { sentence = '', figures = {}, further = [], advice = [] } = problem;
  const advised = advice.map((each, place) =>
    place === 0 ? each : { sentence: 'advice.another', figures: { advice: each } },
  );
  return [{ sentence, figures }, ...further, ...advised].map((each) => sayIn(each, voice, language)).join(' ');
}
