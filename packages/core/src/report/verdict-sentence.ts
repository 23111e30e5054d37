import { formatLength } from '../measure/format.ts';
import type { Range, Report, Verdict } from './report.ts';

const WORDS: Readonly<Record<Verdict, string>> = {
  'will-not-enter': 'will not enter',
  'stops-short': 'stops short',
  tight: 'tight',
  sliding: 'sliding',
  loose: 'loose',
};

/** The verdict in a word or three; 'no tongue' where the cuts leave none. */
export function verdictWord(verdict: Verdict | null): string {
  return verdict === null ? 'no tongue' : WORDS[verdict];
}

/**
 * The verdict as one maker says it to another, in one sentence, lengths in the job's own unit.
 *
 * @example verdictSentence(report) // 'The tongue slides into the groove with 0.2 mm to spare and goes in its full 9 mm.'
 */
export function verdictSentence({ fit, tongue, frame, units }: Report): string {
  const say = (mm: number | null) => formatLength(mm ?? 0, units);
  const insertion = say(tongue.insertion);
  const spare = say(fit.clearance);
  switch (fit.verdict) {
    case null:
      return 'The cuts meet and leave no tongue.';
    case 'will-not-enter':
      return `The tongue will not enter: its tip is ${say(tongue.thicknessAtTip)} thick and the groove ${say(frame.groove.width)} wide.`;
    case 'stops-short':
      return `The tongue stops ${say(fit.deepestInsertion)} in: it wedges, and should go in ${insertion}.`;
    case 'tight':
      return `The tongue is tight: it goes in its full ${insertion} with ${spare === say(0) ? 'nothing' : `only ${spare}`} to spare.`;
    case 'sliding':
      return `The tongue slides into the groove with ${spare} to spare and goes in its full ${insertion}.`;
    case 'loose':
      return `The tongue is loose: it goes in its full ${insertion} with ${spare} to spare and will rattle.`;
  }
}

/** How a face of the panel stands to the frame's over the panel's float: '1.3 mm to 1.5 mm proud', 'flush'. */
export function facePhrase({ least, most }: Range, units: Report['units']): string {
  const say = (mm: number) => formatLength(Math.abs(mm), units);
  // Half of the smallest figure shown: nearer than that is flush.
  const flush = 0.005;
  if (Math.abs(least) < flush && Math.abs(most) < flush) return 'flush';
  if (least <= -flush && most >= flush) return `from ${say(least)} recessed to ${say(most)} proud`;
  const word = most >= flush ? 'proud' : 'recessed';
  const [near, far] = [least, most].sort((one, other) => Math.abs(one) - Math.abs(other)) as [number, number];
  return say(near) === say(far) ? `${say(far)} ${word}` : `${say(near)} to ${say(far)} ${word}`;
}
