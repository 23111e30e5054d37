import type { JSX } from 'preact';
import { said } from '../words/aloud.ts';

/** What screen readers are told, the latest last. */
export function Said(): JSX.Element {
  return (
    <div class="unseen" role="log" aria-label="Told last" aria-live="polite">
      {said.value.map(([number, words]) => (
        <p key={number}>{words}</p>
      ))}
    </div>
  );
}
