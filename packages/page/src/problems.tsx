import type { Severity } from '@fielded/core';
import type { JSX } from 'preact';
import { useDesk } from './desk/context.ts';

const SIGNS: Readonly<Record<Severity, readonly [sign: string, word: string]>> = {
  error: ['×', 'Error'],
  warning: ['!', 'Warning'],
  caution: ['△', 'Caution'],
};

/** What is wrong with the joint, and what to do about it. */
export function Problems(): JSX.Element | null {
  const { problems } = useDesk();
  if (problems.value.length === 0) return null;
  return (
    <ul class="problems" aria-label="Problems">
      {problems.value.map(({ severity, code, at, message }) => (
        <li key={`${code} ${at}`} class={severity}>
          <span class="sign" role="img" aria-label={SIGNS[severity][1]}>
            {SIGNS[severity][0]}
          </span>
          <span>{message}</span>
        </li>
      ))}
    </ul>
  );
}
