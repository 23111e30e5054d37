import { formatLength, goesTogether, type Report, type Stated, verdictSentence, verdictWord } from '@fielded/core';
import { type Signal, useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useDesk } from '../desk/context.ts';
import { useTold } from '../words/aloud.ts';
import { type Deciding, decidingFigures } from '../words/figures.ts';
import { keepTogether } from '../words/keep-together.ts';
import { VerdictMark } from '../words/verdict-mark.tsx';
import { Statements, useSettledRun } from './statements.tsx';

/** The verdict in a sentence, the two statements and the five figures that decide, above the sheet; on a small screen a line, the rest on demand. */
export function VerdictBar(): JSX.Element {
  const desk = useDesk();
  const opened = useSignal(false);
  const report = desk.report.value;
  const { verdict } = report.fit;
  const run = useSettledRun();
  const blocked = isBlocked(report, run);
  return (
    <div
      class={`verdict ${goesTogether(verdict) ? 'good' : 'bad'}${opened.value ? ' opened' : ''}`}
      data-units={report.units}
      data-verdict={verdict ?? 'none'}
    >
      <Sentence verdict={verdict} blocked={blocked} words={headSentence(report, run)} />
      <button
        type="button"
        class="line-of-verdict"
        aria-expanded={opened.value}
        onClick={() => {
          opened.value = !opened.value;
        }}
      >
        Figures
      </button>
      <Statements report={report} run={run} />
      <dl class="figures">
        {decidingFigures(report).map(({ key, name, words, mm }) => (
          <FigureOf key={key} of={key} name={name} words={words} mm={mm} />
        ))}
      </dl>
    </div>
  );
}

// In parts whose words are handed to them: while a size is moved, only those that say something else are gone over.
function Sentence({ verdict, blocked, words }: SentenceProps): JSX.Element {
  return (
    <p class="sentence">
      <VerdictMark verdict={verdict} blocked={blocked} />
      <span>{keepTogether(words)}</span>
    </p>
  );
}

interface SentenceProps {
  readonly verdict: Report['fit']['verdict'];
  readonly blocked: boolean;
  readonly words: string;
}

/** One of the figures that decide. */
function FigureOf({ of, name, words, mm }: Omit<Deciding, 'key'> & { readonly of: Deciding['key'] }): JSX.Element {
  return (
    <div class={of === 'clearance' ? 'judged' : ''}>
      <dt>{name}</dt>
      <dd>
        <data value={mm === null ? '' : String(mm)} data-figure={of}>
          {keepTogether(words)}
        </data>
      </dd>
    </div>
  );
}

/** Whether the joint fits and an error stands against the job all the same: then no tick heads what is said of it. */
function isBlocked({ fit }: Report, run: Stated): boolean {
  return fit.verdict === 'sliding' && run.mark === 'no';
}

/** The verdict in a sentence; where the job cannot be run all the same both in one, no longer than the others: the drawing below stays where it is. */
function headSentence(report: Report, run: Stated): string {
  return isBlocked(report, run) ? `The joint fits, but ${run.words}.` : verdictSentence(report);
}

/** The verdict in a word and the way to a better one, under a small screen's drawing: both stay in sight wherever the page is. */
export function VerdictChip({ fitting }: { fitting: Signal<boolean> }): JSX.Element {
  const report = useDesk().report.value;
  const { fit } = report;
  const run = useSettledRun();
  return (
    <div class={`chip ${goesTogether(fit.verdict) ? 'good' : 'bad'}`}>
      <p aria-hidden="true">
        <VerdictMark verdict={fit.verdict} blocked={isBlocked(report, run)} />
        <span>
          {run.mark === 'no' && <span class="against">{run.words}</span>}
          {lineOf(report)}
        </span>
      </p>
      <button
        type="button"
        class={fit.verdict === 'sliding' || fitting.value ? '' : 'main'}
        aria-expanded={fitting.value}
        onClick={() => {
          fitting.value = !fitting.value;
        }}
      >
        Make it fit
      </button>
    </div>
  );
}

/** The verdict in a few words. @example 'sliding, 0.2 mm clear', 'will not enter, 1.6 mm too thick' */
function lineOf({ fit, units }: Report): string {
  const word = verdictWord(fit.verdict);
  if (fit.clearance === null) return word;
  const words = keepTogether(formatLength(Math.abs(fit.clearance), units));
  return `${word}, ${words} ${fit.clearance < 0 ? 'too thick' : 'clear'}`;
}

/** Tells screen readers the verdict once the hand rests, where it has changed. */
export function LiveVerdict(): null {
  const report = useDesk().report.value;
  useTold(headSentence(report, useSettledRun()));
  return null;
}
