import type { Problem, Severity } from '@fielded/core';
import type { JSX } from 'preact';
import { useRef } from 'preact/hooks';
import { useDesk } from '../desk/context.ts';
import { keepTogether } from '../words/keep-together.ts';

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
          <span>{keepTogether(message)}</span>
        </li>
      ))}
    </ul>
  );
}
