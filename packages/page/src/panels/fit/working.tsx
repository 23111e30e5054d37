import type { JSX } from 'preact';

/** Said while the solver takes its time; the page can be worked on meanwhile. */
export function Working(): JSX.Element {
  return <p class="hint">Working it out. You can go on meanwhile; Cancel ends it.</p>;
}
