import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { Later } from '../../desk/later.tsx';
import type { OutlinePlace } from '../../files/outline-files.ts';

/** Opens the part in which an outline is drawn, traced or read for a cut or the sticking; it is fetched then. */
export function OwnOutline({
  place,
  whose,
  isOutline,
}: {
  place: OutlinePlace;
  whose: string;
  isOutline: boolean;
}): JSX.Element {
  const opened = useSignal(false);
  const button = useRef<HTMLButtonElement>(null);
  const closed = useRef(false);
  // Where it was opened the hand goes on, and the drawing is in sight again.
  useLayoutEffect(() => {
    if (opened.value || !closed.current) return;
    closed.current = false;
    button.current?.focus({ preventScroll: true });
    button.current?.scrollIntoView({ block: 'center', behavior: 'instant' });
  }, [opened.value]);
  if (opened.value)
    return (
      <Later
        load={loadOutline}
        place={place}
        close={() => {
          closed.current = true;
          opened.value = false;
        }}
      />
    );
  return (
    <>
      {isOutline && <p class="hint">An outline of its own. Choosing a shape above replaces it.</p>}
      <button
        ref={button}
        type="button"
        class="quiet"
        aria-label={`Own outline… for the ${whose}`}
        onClick={() => {
          opened.value = true;
        }}
      >
        Own outline…
      </button>
    </>
  );
}

const loadOutline = () => import('../outline/outline-panel.tsx').then(({ OutlinePanel }) => OutlinePanel);
