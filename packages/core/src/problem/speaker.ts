import { type ProblemCode, SEVERITIES } from './codes.ts';
import { IN_ENGLISH, type Language, type Voice } from './language.ts';
import { sayIn } from './phrase.ts';
import type { Advice, Figures, Problem, Said, Spans } from './problem.ts';

/** Code of a sentence: its key up to the first full stop. */
type CodeOf<K extends string> = K extends `${infer Code}.${string}` ? Code : K;

/** Kind of figure that a placeholder holds. */
type KindOf<P extends string> = P extends `${string}:spans`
  ? Spans
  : P extends `${string}:list`
    ? readonly Said[]
    : P extends `${string}:said`
      ? Said
      : P extends `${string}:path`
        ? string
        : P extends `${string}:${string}`
          ? number
          : string;
type NameOf<P extends string> = P extends `${infer Name}:${string}` ? Name : P;

/** The figures that a sentence names, with their types, read off the sentence itself. */
export type FiguresOf<S> = S extends `${string}{${infer P}}${infer Rest}`
  ? (P extends ` ${string}` ? unknown : { readonly [N in NameOf<P>]: KindOf<P> }) & FiguresOf<Rest>
  : unknown;

/** What a problem is about, what else it says, and what would put it right. */
export type More = Pick<Problem, 'further' | 'about' | 'advice'>;

/** Says the sentences of one catalogue `S`, and no other: its types refuse a sentence that is not at hand. */
export interface Speaker<S> {
  /**
   * A problem in words, with the figures it names kept beside them: lengths mm, angles degrees.
   *
   * @example sayProblem('no-tongue', 'cuts', { where: [[0, 4]] }, { units: 'mm' }).code // 'no-tongue'
   */
  sayProblem<K extends keyof S & (ProblemCode | `${ProblemCode}.${string}`)>(
    sentence: K,
    at: string,
    figures: FiguresOf<S[K]>,
    voice: Voice,
    more?: More,
  ): Problem;
  /** A sentence with its figures, to be said later or in another sentence. */
  told<K extends keyof S & string>(sentence: K, figures: FiguresOf<S[K]>): Said;
  /** A sentence of the catalogue in words. */
  say<K extends keyof S & string>(sentence: K, figures: FiguresOf<S[K]>, voice: Voice): string;
}

/** A speaker of a catalogue in English, which other languages stand in for. */
export function createSpeaker<S extends Readonly<Record<string, string>>>(english: S): Speaker<S> {
  const told: Speaker<S>['told'] = (sentence, figures) => ({ sentence, figures: figures as Figures });
  return {
    sayProblem(sentence, at, figures, voice, more = {}) {
      const code = sentence.split('.')[0] as CodeOf<typeof sentence> & ProblemCode;
      const problem = { severity: SEVERITIES[code], code, at, ...told(sentence, figures), ...more };
      return { ...problem, message: messageOf(problem, voice, voice.language ?? IN_ENGLISH, english) };
    },
    told,
    say: (sentence, figures, voice) =>
      sayIn(told(sentence, figures), voice, { language: voice.language ?? IN_ENGLISH, english }),
  };
}

/** A problem's whole message: its sentence, what else it says, and its advice. */
export function messageOf(
  problem: Omit<Problem, 'message'>,
  voice: Voice,
  language: Language,
  english: Readonly<Record<string, string>>,
): string {
  if (voice.mute) return '';
  const { sentence = '', figures = {}, further = [], advice = [] } = problem;
  const advised = advice.map(
    (each: Advice, place): Said => (place === 0 ? each : { sentence: 'advice.another', figures: { advice: each } }),
  );
  return [{ sentence, figures }, ...further, ...advised]
    .map((each) => sayIn(each, voice, { language, english }))
    .join(' ');
}
