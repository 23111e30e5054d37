import type { Report, Verdict } from '@fielded/core';
import { facePhrase, verdictWord } from '@fielded/core';
import { spokenLength } from './lengths.ts';

/** The verdict as a heading. */
export function verdictHeading(verdict: Verdict | null): string {
  const word = verdictWord(verdict);
  return word[0]!.toUpperCase() + word.slice(1);
}

/** The tongue in words; '' where there is none. */
export function tongueSentence(report: Report): string {
  const { thicknessAtTip: tip, thicknessAtMouth: mouth, grooveNeeded } = report.tongue;
  if (tip === null || mouth === null || grooveNeeded === null) return '';
  const say = (mm: number) => spokenLength(mm, report.units);
  const thick =
    say(tip) === say(mouth) ? `${say(tip)} from tip to mouth` : `${say(tip)} at the tip, ${say(mouth)} at the mouth`;
  const clearance = report.fit.clearance ?? 0;
  const short = clearance < 0 ? `, ${say(-clearance)} wider` : '';
  return `Tongue ${thick}; it needs a groove of ${say(grooveNeeded)}${short}.`;
}

/** How the panel's faces stand to the frame's, over the panel's float; '' when it does not enter. */
export function facesSentence({ fit, units }: Report): string {
  if (!fit.frontFace || !fit.backFace) return '';
  return `In front ${facePhrase(fit.frontFace, units)}, at the back ${facePhrase(fit.backFace, units)}.`;
}
