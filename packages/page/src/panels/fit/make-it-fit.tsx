import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect } from 'preact/hooks';
import { useDesk } from '../../desk/context.ts';
import { isSmallScreen } from '../../stage/small-screen.ts';
import { AnyFigure } from './any-figure.tsx';
import { BothCuts } from './both-cuts.tsx';

/** Front and back set together for the fit and the face, or any one figure by any one size; the move is shown before it is made. */
export function MakeItFit({ close }: { close: () => void }): JSX.Element {
  const { cuts } = useDesk().job.value;
  const front = cuts.find(({ side }) => side === 'front');
  const back = cuts.find(({ side }) => side === 'back');
  const both = front !== undefined && back !== undefined;
  const other = useSignal(!both);
  // On a small screen the panel stands at the foot: scroll the drawing above it into sight.
  useEffect(() => {
    if (isSmallScreen()) document.querySelector('.sheets')?.scrollIntoView({ block: 'start', behavior: 'instant' });
  }, []);
  return (
    <section class="panel fit-panel" aria-label="Make it fit">
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
