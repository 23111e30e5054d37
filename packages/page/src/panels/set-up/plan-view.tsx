import type { SetUp } from '@fielded/core';
import type { JSX } from 'preact';

/** The table from above, the operator at the foot: which way the spindle turns, and which way the work is fed. */
export function PlanView({ setUp: { rotation, feedDirection, presented, curve } }: { setUp: SetUp }): JSX.Element {
  const clockwise = rotation === 'clockwise';
  const leftwards = feedDirection === 'right to left';
  const words = `Turns ${rotation} seen from above; feed from ${feedDirection}.`;
  // The turn drawn as three quarters of a circle round the spindle, its head where it ends.
  const turn = clockwise ? 'M-11 11A15.5 15.5 0 1 1 11 11' : 'M11 11A15.5 15.5 0 1 0-11 11';
  const head = clockwise ? 'M11 11l5.5-1.5M11 11l.8-5.8' : 'M-11 11l-5.5-1.5M-11 11l-.8-5.8';
  const feed = leftwards ? 'M62 40H-62m7-5-7 5 7 5' : 'M-62 40H62m-7-5 7 5-7 5';
  return (
    <figure class="plan-view">
      <svg viewBox="-100 -34 200 88" aria-hidden="true">
        {curve?.alone ? <circle class="fence" r="12" /> : <path class="fence" d="M-98 12H-30M30 12H98" />}
        <circle class="spindle" r="4" />
        <circle class="cutter" r="22" />
        <path class="arrow" d={`${turn}${head}`} />
        <path class="work" d={presented === 90 ? 'M-80 15H80V22H-80Z' : 'M-80 15H80V32H-80Z'} />
        <path class="arrow" d={feed} />
      </svg>
      <figcaption>{words}</figcaption>
    </figure>
  );
}
