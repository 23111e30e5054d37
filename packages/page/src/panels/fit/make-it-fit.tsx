import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { useOpenedPart } from '../../entry/opened-part.ts';
import { isSmallScreen } from '../../stage/small-screen.ts';
import { adoptStyles } from '../../style/adopt-styles.ts';
import fitStyles from '../../style/fit.css?inline';
import { AnyFigure } from './any-figure.tsx';
import { BothCuts } from './both-cuts.tsx';

adoptStyles(fitStyles);

/** Front and back set together for the fit and the face, or any one figure by any one size; the move is shown before it is made. */
export function MakeItFit({ close }: { close: () => void }): JSX.Element {
  const { cuts } = useDesk().job.value;
  const front = cuts.find(({ side }) => side === 'front');
  const back = cuts.find(({ side }) => side === 'back');
  const both = front !== undefined && back !== undefined;
  const other = useSignal(!both);
  const panel = useRef<HTMLElement>(null);
  useOpenedPart(panel, close);
  // On a small screen the panel stands at the foot: scroll the drawing above it into sight.
  useEffect(() => {
    if (isSmallScreen()) document.querySelector('.sheets')?.scrollIntoView({ block: 'start', behavior: 'instant' });
  }, []);
  return (
    <section
      class="panel fit-panel"
      aria-label="Make it fit"
      ref={panel}
      onKeyDown={(event) => {
        const { target } = event;
        if (event.key === 'Enter' && target instanceof HTMLInputElement) makeMoveOf(panel.current);
      }}
    >
      {both && !other.value ? (
        <BothCuts front={front.name} back={back.name} close={close} />
      ) : (
        <AnyFigure close={close} />
      )}
      {both && (
        <button
          type="button"
          class="quiet"
          onClick={() => {
            other.value = !other.value;
          }}
        >
          {other.value ? 'Set front and back together' : 'Ask for another figure'}
        </button>
      )}
    </section>
  );
}

/** Makes the move of a panel, where there is one to make. */
function makeMoveOf(panel: HTMLElement | null): void {
  panel?.querySelector<HTMLButtonElement>('.main:not(:disabled)')?.click();
}
