import type { Code, FaultCode } from './codes.ts';

/** How bad a problem is: an error stops the work, a warning spoils it unless heeded, a caution is about hands or habit. */
export type Severity = 'error' | 'warning' | 'caution';

/**
 * One thing that is wrong, in words a maker can act on.
 *
 * `code` is stable and listed in docs/problem-codes.md; `at` is the path of the value in the job file, such as
 * `cuts[1].depth`, or '' for the file as a whole; `message` says what is wrong, where, and what to do about it. The rest is
 * what the message is made from: whoever wants other words, or to act on it, reads that and never the message.
 */
export interface Problem extends Partial<Said> {
  readonly severity: Severity;
  readonly code: Code;
  readonly at: string;
  readonly message: string;
  /** What the message goes on to say after its first sentence. */
  readonly further?: readonly Said[];
  /** What it speaks of, by name. */
  readonly about?: Subject;
  /** What would put it right, the best first: each applied and evaluated before it is given. The message ends with it. */
  readonly advice?: readonly Advice[];
}

/** A sentence of the catalogue and the figures that stand in it: lengths mm, angles degrees, texts as they are. */
export interface Said {
  readonly sentence: string;
  readonly figures: Figures;
}

/** A change to the job that puts a problem right, in words and as values of the job file. */
export interface Advice extends Said {
  readonly message: string;
  readonly writes: readonly (FileValue | FileWord)[];
}

/** One value in a job file: where it stands and what it should be, mm. */
export interface FileValue {
  readonly path: readonly (string | number)[];
  readonly mm: number;
}

/** One word in a job file. */
export interface FileWord {
  readonly path: readonly (string | number)[];
  readonly word: string;
}

/** What a problem speaks of, by the name it has in its file. */
export interface Subject {
  readonly cut?: string;
  readonly knife?: string;
  readonly head?: string;
  readonly machine?: string;
  readonly door?: string;
}

/** From one length to another, several times. */
export type Spans = readonly (readonly [from: number, to: number])[];

/** Figures of a sentence by name. */
export type Figures = Readonly<Record<string, number | string | Spans | Said | readonly Said[]>>;

/** A problem found while reading a file: always an error, with the place in the text it was read from. */
export interface Fault extends Problem {
  readonly severity: 'error';
  readonly code: FaultCode;
  /** Name of the file it is in: '' for the job file, else the shop file as the job or the caller names it. */
  readonly file: string;
  /** 1-based line and column in the file; 0 where the fault has no place (an empty file, say). */
  readonly line: number;
  readonly column: number;
  /** What was found there, as text; '' where nothing was. */
  readonly received: string;
  /** What would be accepted. */
  readonly expected: string;
}
