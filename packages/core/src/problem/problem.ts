/** How bad a problem is: an error stops the work, a warning spoils it unless heeded, a caution is about hands or habit. */
export type Severity = 'error' | 'warning' | 'caution';

/**
 * One thing that is wrong, in words a maker can act on.
 *
 * `code` is stable and listed in docs/problem-codes.md; `at` is the path of the value in the job file, such as
 * `cuts[1].depth`, or '' for the file as a whole; `message` says what is wrong, where, and what to do about it.
 */
export interface Problem {
  readonly severity: Severity;
  readonly code: string;
  readonly at: string;
  readonly message: string;
  /** The sentence it is made from and the figures that stand in it: lengths mm, angles degrees, texts as they are. */
  readonly sentence?: string;
  readonly figures?: Figures;
}

/** Figures of a sentence by name. */
export type Figures = Readonly<Record<string, number | string>>;

/** A problem found while reading a file: always an error, with the place in the text it was read from. */
export interface Fault extends Problem {
  readonly severity: 'error';
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
