import type { JSX } from 'preact';

/** What stands in place of an answer that takes long. */
export function Working(): JSX.Element {
  return <p class="hint">Working it out. You can go on meanwhile; Cancel ends it.</p>;
}
