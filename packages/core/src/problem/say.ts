import { ALL_ENGLISH } from './all-english.ts';
import type { ProblemCode } from './codes.ts';
import { ENGLISH } from './english.ts';
import { IN_ENGLISH, type Language, type Voice } from './language.ts';
import { phraseIn, sayIn } from './phrase.ts';
import type { Advice, Figures, Problem, Said } from './problem.ts';
import { createSpeaker, type FiguresOf, type More, messageOf, type Speaker } from './speaker.ts';

export type { Language, Voice } from './language.ts';

type Sentences = typeof ENGLISH;
export type SentenceKey = keyof Sentences;

const SPEAKER: Speaker<Sentences> = createSpeaker(ENGLISH);

/** See `Speaker`: of the whole catalogue. */
export const sayProblem: Speaker<Sentences>['sayProblem'] = SPEAKER.sayProblem;
/** See `Speaker`. */
export const told: Speaker<Sentences>['told'] = SPEAKER.told;
/** See `Speaker`. */
export const say: Speaker<Sentences>['say'] = SPEAKER.say;

/**
 * A sentence with its figures and terms written in; what it names of the catalogue is said in the language, or in English.
 *
 * @throws RangeError for a figure that is not given or a term that is not known.
 */
export function phrase(sentence: string, figures: Figures, voice: Voice, language: Language): string {
  return phraseIn(sentence, figures, voice, { language, english: ENGLISH });
}

/** A problem that is put into words only when a voice is given: most candidates are dropped unsaid. */
export type Unsaid = (voice: Voice) => Problem;

/** Keeps a problem of the whole catalogue to be said later. */
export function sayLater<K extends SentenceKey & (ProblemCode | `${ProblemCode}.${string}`)>(
  sentence: K,
  at: string,
  figures: FiguresOf<Sentences[K]>,
  more?: More,
): Unsaid {
  return (voice) => sayProblem(sentence, at, figures, voice, more);
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

/** Advice that was made mute, in words. */
export function sayAdvice(advice: Advice, voice: Voice): Advice {
  const message = sayIn(advice, voice, { language: voice.language ?? IN_ENGLISH, english: ENGLISH });
  return { ...advice, message };
}

/** The same problem with what would put it right; `further` is said before it. */
export function withAdvice(
  problem: Problem,
  advice: readonly Advice[],
  further: readonly Said[],
  voice: Voice,
): Problem {
  const all = { ...problem, further: [...(problem.further ?? []), ...further], advice };
  return { ...all, message: messageOf(all, voice, voice.language ?? IN_ENGLISH, ENGLISH) };
}

/** The same problem, or fault of a file, in another language; in English what that language has no sentence for. */
export function translate<P extends Problem>(problem: P, voice: Voice, language: Language): P {
  if (problem.sentence === undefined) return problem;
  const advice = problem.advice?.map((each) => ({
    ...each,
    message: sayIn(each, voice, { language, english: ALL_ENGLISH }),
  }));
  return { ...problem, ...(advice && { advice }), message: messageOf(problem, voice, language, ALL_ENGLISH) };
}
