import type { JSX } from 'preact';
import { said } from '../words/aloud.ts';

/** What screen readers are told, the latest last. */
export function Said(): JSX.Element {
  return (
    <div class="unseen" role="log">
      {said.value.map(([number, words]) => (
        <p key={number}>{words}</p>
      ))}
    </div>
  );
}
