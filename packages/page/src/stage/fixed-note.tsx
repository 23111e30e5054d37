import type { JSX } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { adoptStyles } from '../style/adopt-styles.ts';
import noteStyles from '../style/fixed-note.css?inline';
import { placeOver } from './over-figure.ts';
import type { Spot } from './view-scene.ts';

adoptStyles(noteStyles);

/** Says, where a dimension stands that cannot be typed over, what it follows from. */
export function FixedNote({ open, close, words }: { open: Spot; close: () => void; words: string }): JSX.Element {
  const button = useRef<HTMLButtonElement>(null);
  // Before it is painted: a key that is pressed as soon as it is seen belongs to it.
  useLayoutEffect(() => button.current?.focus(), []);
  return (
    <div class="dimension-note" role="note" ref={(element) => placeOver(element, open)}>
      <p>{words}</p>
      <button
        type="button"
        ref={button}
        onClick={close}
        onBlur={close}
        onKeyDown={(event) => {
          if (event.key !== 'Escape') return;
          event.preventDefault();
          close();
        }}
      >
        OK
      </button>
    </div>
  );
}
