import { goesTogether, type Report, verdictWord } from '@fielded/core';
import type { JSX } from 'preact';

type Verdict = Report['fit']['verdict'];

/** Marks of the verdicts, as on the drawings: each has its own shape, so that none is told by colour alone. */
const MARKS: Readonly<Record<NonNullable<Verdict>, string>> = {
  'will-not-enter': 'M-2-2 2 2M-2 2 2-2',
  'stops-short': 'M-2.4 0H1.2M-.4-1.6 1.2 0-.4 1.6M2.2-2.3V2.3',
  tight: 'M-2.3-2-.4 0-2.3 2M2.3-2 .4 0 2.3 2',
  sliding: 'M-2.2.2-.6 1.9 2.3-1.8',
  loose: 'M-2 0a2 2 0 1 1 4 0 2 2 0 1 1-4 0Z',
};
const NONE = 'M-2.2 0a2.2 2.2 0 1 1 4.4 0 2.2 2.2 0 1 1-4.4 0ZM-1-1 1 1M-1 1 1-1';

/** The mark of a verdict; a cross where an error stands against the job although the joint fits (`blocked`). */
export function VerdictMark({ verdict, blocked }: { verdict: Verdict; blocked: boolean }): JSX.Element {
  const shape = blocked ? 'will-not-enter' : verdict;
  return (
    <svg
      class={`mark ${goesTogether(verdict) && !blocked ? 'good' : 'bad'}`}
      viewBox="-3 -3 6 6"
      role="img"
      aria-label={blocked ? 'cannot be run' : verdictWord(verdict)}
    >
      <path d={shape === null ? NONE : MARKS[shape]} />
    </svg>
  );
}
