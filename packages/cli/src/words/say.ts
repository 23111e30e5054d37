import { createSpeaker, type FiguresOf, type Speaker, type Voice } from '@fielded/core';
import type { Io } from '../io.ts';
import { safe } from '../io.ts';
import { CLI_ENGLISH } from './english.ts';

export type Sentences = typeof CLI_ENGLISH;
export type LineKey = keyof Sentences;

const SPEAKER: Speaker<Sentences> = createSpeaker(CLI_ENGLISH);

/** A line of the command in words, safe for a terminal: names in it come from files, and so do other languages. */
export function say<K extends LineKey>(line: K, figures: FiguresOf<Sentences[K]>, voice: Voice): string {
  return safe(SPEAKER.say(line, figures, voice));
}

/** The lines that join one thing to another, as in a list. */
type Joining = { [K in LineKey]: Sentences[K] extends `{one}${string}{other}` ? K : never }[LineKey];

/** Things one after the other; '' where there are none. */
export function sayAll(parts: readonly string[], how: Joining, voice: Voice): string {
  if (parts.length < 2) return parts.join();
  const join = (one: string, other: string) => say(how, { one, other } as FiguresOf<Sentences[Joining]>, voice);
  // Where the line only puts something between the two, thousands of them are joined at once.
  const [start, between, end] = join(ONE, OTHER).split(/[\uE000\uE001]/);
  return start === '' && end === '' && between !== undefined ? parts.join(between) : parts.reduce(join);
}

/** Signs that no text uses, in the place of the things that a line joins. */
const [ONE, OTHER] = ['\uE000', '\uE001'];

/** The voice for messages that belong to no job. */
export function voiceOf({ language }: Pick<Io, 'language'>): Voice {
  return { units: 'mm', ...(language && { language }) };
}
