import { MISREAD_WORDS, type Misread, type Misreading } from '../measure/misread.ts';
import type { FaultCode } from './codes.ts';
import { IN_ENGLISH, type Voice } from './language.ts';
import { sayIn } from './phrase.ts';
import type { Figures, Said } from './problem.ts';
import { createSpeaker, type FiguresOf, type Speaker } from './speaker.ts';
import { FIGURE_WORDS } from './words/figure.ts';
import { KEY_WORDS } from './words/keys.ts';
import { READING_WORDS } from './words/reading.ts';
import { READING_DOOR_WORDS } from './words/reading-doors.ts';
import type { TEXT_WORDS } from './words/text.ts';

type Sentences = typeof READING_WORDS & typeof READING_DOOR_WORDS;
type TextSentences = typeof TEXT_WORDS;

/** The sentences of a catalogue that say what is wrong with a file; each has another, `.do`, that says what to do about it. */
type FaultsOf<S> = { [K in keyof S & string]: `${K}.do` extends keyof S ? K : never }[keyof S & string];

/** What is wrong with the keys and values of a file. */
export type FaultSentence = FaultsOf<Sentences>;

/** What is wrong with a file's text, before its keys are looked at. */
export type TextFaultSentence = FaultsOf<TextSentences>;

/** The sentences that say what to do. */
export type FaultRemedy = Extract<keyof Sentences, `${string}.do`>;

/** The figures that a fault's two sentences name; the path of the value is known from its place. */
export type FaultFigures<K extends FaultSentence, R extends FaultRemedy = `${K}.do`> = Omit<
  FiguresOf<Sentences[K]> & FiguresOf<Sentences[R]>,
  'at'
>;

/** The same of a sentence about the text. */
export type TextFaultFigures<K extends TextFaultSentence> = Omit<
  FiguresOf<TextSentences[K]> & FiguresOf<TextSentences[`${K}.do`]>,
  'at'
>;

/** A fault before it is known where it stands: lengths mm, angles degrees. */
export interface ToldFault {
  readonly sentence: FaultSentence | TextFaultSentence;
  /** What to do about it. */
  readonly remedy: FaultRemedy | `${TextFaultSentence}.do`;
  readonly figures: Figures;
  /** The catalogue of both sentences, where they are not in FAULT_ENGLISH. */
  readonly english?: TextSentences;
}

/** What is wrong with a file and what to do about it, in the sentences of English that other languages stand in for. */
export const FAULT_ENGLISH: Sentences & typeof FIGURE_WORDS & typeof KEY_WORDS & typeof MISREAD_WORDS = {
  ...READING_WORDS,
  ...READING_DOOR_WORDS,
  ...FIGURE_WORDS,
  ...KEY_WORDS,
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
export function codeOfFault(sentence: FaultSentence | TextFaultSentence): FaultCode {
  return sentence.split('.')[1] as FaultCode;
}

/** See `Speaker`: a part of a fault's sentence. */
export const toldPart: Speaker<typeof FIGURE_WORDS>['told'] = createSpeaker(FIGURE_WORDS).told;

/** What was read where no measure is, and what to write instead, as parts of a sentence. */
export function sayMisread({ read, instead }: Misread, voice: Voice): Misreading {
  const speech = { language: voice.language ?? IN_ENGLISH, english: MISREAD_WORDS };
  return { read: sayIn(read, voice, speech), instead: sayIn(instead, voice, speech) };
}

/** What stands in the place of a value, such as 'a thickness'. */
export type ValueWords = (typeof KEY_WORDS)[Extract<keyof typeof KEY_WORDS, `value.${string}`>];

const KEY_OF: ReadonlyMap<string, string> = new Map(Object.entries(KEY_WORDS).map(([key, words]) => [words, key]));

/**
 * What a key is for, or what stands in the place of a value, as a part of a fault's sentence. The schema, which is published in English,
 * holds these words themselves.
 *
 * @throws RangeError for words that are not in the catalogue: another language could not say them.
 */
export function toldKey(words: string): Said {
  const sentence = KEY_OF.get(words);
  if (sentence === undefined) throw new RangeError(`${words} is not in words/keys.ts`);
  return { sentence, figures: {} };
}
