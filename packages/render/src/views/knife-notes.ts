import type { KnifeReport, Report } from '@fielded/core';
import { formatNumber } from '@fielded/core';
import { safeText } from '../text/safe-text.ts';
import { spokenLength } from '../words/lengths.ts';
import { reliefNotes } from '../words/relief.ts';

/** What stands under a knife's drawing, a sentence or two a line. */
export function knifeNotes(knife: KnifeReport, units: Report['units']): string[] {
  const say = (mm: number) => spokenLength(mm, units);
  const { run, rotation } = knife.groundFor;
  const shear = knife.shear === 0 ? 'no shear' : `shear ${degrees(knife.shear)}`;
  const fitted =
    knife.deviation === 0
      ? 'The outline is exact.'
      : `Outline of ${knife.pieces} lines and arcs, at most ${formatNumber(knife.deviation, 4)} mm from the exact curve; ordinates exact.`;
  const lines = [
    `Head ${safeText(knife.head)}: cutting radius ${say(knife.cuttingRadius)}, rake ${degrees(knife.rake)}, ${shear}, wedge ${degrees(knife.wedge)}. ${presented(knife)}`,
    `Ground to run ${run}, turning ${rotation} seen from above${knife.assumed ? ' (assumed: nobody said, confirm it before grinding)' : ''}. Drawn as seen on the cutting face.`,
    fitted,
  ];
  if (knife.limiter) {
    const { gap } = knife.limiter;
    const { least, most } = gap.alongFace;
    const onSteel = most - least < 0.005 ? say(least) : `${say(least)} to ${say(most)}`;
    lines.push(
      `Limiter set back ${say(gap.most)} on the radius: ${onSteel} on the steel; ${say(gap.side)} clear of steep walls sideways.`,
    );
  }
  lines.push(
    ...reliefNotes(knife, units),
    `Least clearance ${degrees(knife.clearance.least)}, to the side ${degrees(knife.clearance.side.least)}; heel ${say(Math.abs(knife.heel.least))} ${knife.heel.least < 0 ? 'outside' : 'inside'} its circle.`,
    `The panel passes ${say(knife.leastRadius)} from the axis.`,
    'The marks on the head and its knives, and the rules where you work, go before this sheet.',
  );
  return lines;
}

function presented({ presented }: KnifeReport): string {
  if (presented === 0) return 'Panel flat on the table.';
  return presented === 90 ? 'Panel on edge.' : `Spindle tilted ${degrees(presented)}.`;
}

function degrees(angle: number): string {
  return `${formatNumber(angle, 1)}°`;
}
