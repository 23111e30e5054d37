import type { Problem, Severity } from '@fielded/core';
import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { useDesk } from '../desk/context.ts';
import { adoptStyles } from '../style/adopt-styles.ts';
import problemStyles from '../style/problems.css?inline';
import { keepTogether } from '../words/keep-together.ts';

adoptStyles(problemStyles);

const SIGNS: Readonly<Record<Severity, readonly [sign: string, word: string]>> = {
  error: ['×', 'Error'],
  warning: ['!', 'Warning'],
  caution: ['△', 'Caution'],
};

/** What is wrong with the joint, and what to do about it. */
export function Problems(): JSX.Element | null {
  const desk = useDesk();
  const settled = useRef<readonly Problem[]>([]);
  // Lines that come and go would move the drawing under the hand.
  if (!desk.busy.value) settled.current = desk.problems.value;
  if (settled.current.length === 0) return null;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a long list scrolls within the stage, and keys must reach it
    <ul class="problems" aria-label="Problems" tabIndex={0}>
      {settled.current.map(({ severity, code, at, message }) => (
        <li key={`${code} ${at}`} class={severity}>
          <span class="sign" role="img" aria-label={SIGNS[severity][1]}>
            {SIGNS[severity][0]}
          </span>
          {severity === 'caution' ? <Caution message={message} /> : <span>{keepTogether(message)}</span>}
        </li>
      ))}
    </ul>
  );
}

/** A caution longer than this many signs would push all else off a phone's screen. */
const LONG = 240;

/** A caution: of a long one the first sentence, which says what to do, and the rest when it is asked for. Sheets print it whole. */
function Caution({ message }: { message: string }): JSX.Element {
  const opened = useSignal(false);
  const end = message.length > LONG ? message.search(/(?<=[.!?])\s+(?=\p{Lu})/u) : -1;
  if (end < 0) return <span>{keepTogether(message)}</span>;
  return (
    <span>
      {keepTogether(opened.value ? message : message.slice(0, end))}{' '}
      <button
        type="button"
        class="more"
        aria-expanded={opened.value}
        onClick={() => {
          opened.value = !opened.value;
        }}
      >
        {opened.value ? 'Less' : 'More'}
      </button>
    </span>
  );
}
