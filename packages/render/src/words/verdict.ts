import type { Range, Report, Verdict } from '@fielded/core';
import { spokenLength } from './lengths.ts';

const WORDS: Readonly<Record<Verdict, string>> = {
  'will-not-enter': 'Will not enter',
  'stops-short': 'Stops short',
  tight: 'Tight',
  sliding: 'Sliding',
  loose: 'Loose',
};

/** The verdict in a word or three. */
export function verdictWord(verdict: Verdict | null): string {
  return verdict ? WORDS[verdict] : 'No tongue';
}

/** Whether the joint goes together as designed. */
export function goesTogether(verdict: Verdict | null): boolean {
  return verdict === 'tight' || verdict === 'sliding' || verdict === 'loose';
}

/** The verdict as a sentence from one maker to another. */
export function verdictSentence(report: Report): string {
  const { fit, tongue, frame, units } = report;
  const say = (mm: number | null) => spokenLength(mm ?? 0, units);
  const clearance = say(fit.clearance);
  const insertion = say(tongue.insertion);
  switch (fit.verdict) {
    case null:
      return 'The cuts meet and leave no tongue to go into the groove.';
    case 'will-not-enter':
      return `The tip is ${say(tongue.thicknessAtTip)} thick and the groove ${say(frame.groove.width)} wide: it does not start.`;
    case 'stops-short':
      return `The tongue wedges ${say(fit.deepestInsertion)} in and should go in ${insertion}.`;
    case 'tight':
      return `The tongue goes in its full ${insertion} with only ${clearance} to spare: it will bind when it swells.`;
    case 'sliding':
      return `The tongue slides in its full ${insertion} with ${clearance} to spare.`;
    case 'loose':
      return `The tongue goes in its full ${insertion} with ${clearance} to spare: it will rattle.`;
  }
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
export function facesSentence(report: Report): string {
  const { frontFace, backFace } = report.fit;
  if (!frontFace || !backFace) return '';
  return `In front ${standing(frontFace, report)}, at the back ${standing(backFace, report)}.`;
}

/** Proud of the frame or recessed, from least to most. */
function standing({ least, most }: Range, report: Report): string {
  const say = (mm: number) => spokenLength(mm, report.units);
  const flush = 0.005;
  if (Math.abs(least) < flush && Math.abs(most) < flush) return 'flush';
  if (least < -flush && most > flush) return `${say(-least)} recessed to ${say(most)} proud`;
  const [low, high] = [Math.min(Math.abs(least), Math.abs(most)), Math.max(Math.abs(least), Math.abs(most))];
  const range = say(low) === say(high) ? say(low) : `${say(low).replace(' mm', '')} to ${say(high)}`;
  return `${range} ${most > flush ? 'proud' : 'recessed'}`;
}
