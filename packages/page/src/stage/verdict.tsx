import { formatLength, verdictSentence, verdictWord } from '@fielded/core';
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { useDesk } from '../desk/context.ts';
import { decidingFigures } from '../words/figures.ts';
import { keepTogether } from '../words/keep-together.ts';
import { goesTogether, VerdictMark } from '../words/verdict-mark.tsx';

/** The verdict in a sentence and the five figures that decide, above the sheet. */
export function Verdict(): JSX.Element {
  const desk = useDesk();
  const report = desk.report.value;
  const { verdict } = report.fit;
  return (
    <div
      class={`verdict ${goesTogether(verdict) ? 'good' : 'bad'}`}
      data-units={report.units}
      data-verdict={verdict ?? 'none'}
    >
      <p class="sentence">
        <VerdictMark verdict={verdict} />
        <span>{keepTogether(verdictSentence(report))}</span>
      </p>
      <dl class="figures">
        {decidingFigures(report).map(({ key, name, words, mm }) => (
          <div key={key} class={key === 'clearance' ? 'judged' : ''}>
            <dt>{name}</dt>
            <dd>
              <data value={mm === null ? '' : String(mm)} data-figure={key}>
                {keepTogether(words)}
              </data>
            </dd>
          </div>
        ))}
      </dl>
      <LiveVerdict sentence={verdictSentence(report)} />
    </div>
  );
}

/** The verdict in a word on a narrow screen's drawing, which stays in sight when the sentence has gone. */
export function VerdictChip(): JSX.Element {
  const { fit, units } = useDesk().report.value;
  return (
    <p class={`chip ${goesTogether(fit.verdict) ? 'good' : 'bad'}`} aria-hidden="true">
      <VerdictMark verdict={fit.verdict} />
      {verdictWord(fit.verdict)}
      {fit.clearance !== null && <span>{formatLength(fit.clearance, units)} clear</span>}
    </p>
  );
}

/** Read out once the hand rests, not at every step. */
function LiveVerdict({ sentence }: { sentence: string }): JSX.Element {
  const [said, setSaid] = useState(sentence);
  useEffect(() => {
    const wait = setTimeout(() => setSaid(sentence), 600);
    return () => clearTimeout(wait);
  }, [sentence]);
  return (
    <p class="unseen" aria-live="polite" data-live="verdict">
      {said}
    </p>
  );
}
