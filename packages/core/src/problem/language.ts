import type { Units } from '../measure/length.ts';
import type { Terms } from './terms.ts';

/** How the words are to be: lengths in the job's unit, terms of one side of the Atlantic (by default those of the unit). */
export interface Voice {
  readonly units: Units;
  readonly terms?: Terms;
  /** English where none is named. */
  readonly language?: Language;
  /** How places of the job file are called; by their paths unless told. */
  readonly namePlace?: NamePlace;
  /** True leaves all messages empty, for jobs that are only tried out. */
  readonly mute?: boolean;
}

/** What a place of the job file, such as `cuts[1].depth`, is called where the words stand; '' where they stand beside it. */
export type NamePlace = (path: string) => string;

/**
 * A language: its sentences by the keys of the English ones, and its decimal sign. A sentence it
 * lacks is said in English.
 */
export interface Language {
  readonly sentences: Readonly<Record<string, string>>;
  readonly decimal: '.' | ',';
}

/** Says everything in English. */
export const IN_ENGLISH: Language = { sentences: {}, decimal: '.' };
