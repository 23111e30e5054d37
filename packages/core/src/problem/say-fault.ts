import { MISREAD_WORDS } from '../measure/misread.ts';
import type { FaultCode } from './codes.ts';
import type { Figures } from './problem.ts';
import { createSpeaker, type FiguresOf, type Speaker } from './speaker.ts';
import { FIGURE_WORDS } from './words/figure.ts';
import { READING_WORDS } from './words/reading.ts';

type Sentences = typeof READING_WORDS;

/** The sentences that say what is wrong with a file; each has another, `.do`, that says what to do about it. */
export type FaultSentence = {
  [K in keyof Sentences]: `${K}.do` extends keyof Sentences ? K : never;
}[keyof Sentences];

/** The sentences that say what to do. */
export type FaultRemedy = Extract<keyof Sentences, `${string}.do`>;

/** The figures that a fault's two sentences name; the path of the value is known from its place. */
export type FaultFigures<K extends FaultSentence, R extends FaultRemedy = `${K}.do`> = Omit<
  FiguresOf<Sentences[K]> & FiguresOf<Sentences[R]>,
  'at'
>;

/** A fault before it is known where it stands: lengths mm, angles degrees. */
export interface ToldFault {
  readonly sentence: FaultSentence;
  /** What to do about it. */
  readonly remedy: FaultRemedy;
  readonly figures: Figures;
}

/** What is wrong with a file and what to do about it, in the sentences of English that other languages stand in for. */
export const FAULT_ENGLISH: Sentences & typeof FIGURE_WORDS & typeof MISREAD_WORDS = {
  ...READING_WORDS,
  ...FIGURE_WORDS,
  ...MISREAD_WORDS,
};

/** A fault to be said later; `remedy` where another sentence than its own says what to do. */
export function tellFault<K extends FaultSentence, R extends FaultRemedy = `${K}.do`>(
  sentence: K,
  figures: FaultFigures<K, R>,
  remedy: R = `${sentence}.do` as R,
): ToldFault {
  return { sentence, remedy, figures: figures as Figures };
}

/** The code of a fault's sentence: `fault.CODE` or `fault.CODE.VARIANT`. */
export function codeOfFault(sentence: FaultSentence): FaultCode {
  return sentence.split('.')[1] as FaultCode;
}

/** See `Speaker`: a part of a fault's sentence. */
export const toldPart: Speaker<typeof FIGURE_WORDS>['told'] = createSpeaker(FIGURE_WORDS).told;
