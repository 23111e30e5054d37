import type { Voice } from '../problem/language.ts';
import { say } from '../problem/say-joint.ts';
import type { Range, Report, Verdict } from './report.ts';

/** The verdict in a word or three; 'no tongue' where the cuts leave none. */
export function verdictWord(verdict: Verdict | null, voice: Voice = { units: 'mm' }): string {
  return say(verdict === null ? 'word.none' : `word.${verdict}`, {}, voice);
}

/**
 * The verdict as one maker says it to another, in one sentence, lengths in the job's own unit.
 *
 * @example verdictSentence(report) // 'The tongue slides into the groove with 0.2 mm to spare and goes in its full 9 mm.'
 */
export function verdictSentence(
  report: Pick<Report, 'fit' | 'tongue' | 'frame' | 'units'>,
  voice: Voice = report,
): string {
  const { fit, tongue, frame } = report;
  const { insertion } = tongue;
  const spare = fit.clearance ?? 0;
  switch (fit.verdict) {
    case null:
      return say('verdict.none', {}, voice);
    case 'will-not-enter':
      return say('verdict.will-not-enter', { tip: tongue.thicknessAtTip ?? 0, groove: frame.groove.width }, voice);
    case 'stops-short':
      return say('verdict.stops-short', { deepest: fit.deepestInsertion ?? 0, insertion }, voice);
    case 'tight':
      return spare < LEAST_SPARE
        ? say('verdict.tight.nothing', { insertion }, voice)
        : say('verdict.tight', { insertion, spare }, voice);
    case 'sliding':
      return say('verdict.sliding', { insertion, spare }, voice);
    case 'loose':
      return say('verdict.loose', { insertion, spare }, voice);
  }
}

/** Less to spare than this, mm, reads as 0. */
export const LEAST_SPARE = 0.005;

/** How a face of the panel stands to the frame's over the panel's float: '1.3 mm to 1.5 mm proud', 'flush'. */
export function facePhrase({ least, most }: Range, units: Report['units'], voice: Voice = { units }): string {
  // Half of the smallest figure shown: nearer than that is flush.
  const flush = 0.005;
  if (Math.abs(least) < flush && Math.abs(most) < flush) return say('face.flush', {}, voice);
  if (least <= -flush && most >= flush) return say('face.both', { recessed: -least, proud: most }, voice);
  const word = most >= flush ? 'proud' : 'recessed';
  const [near, far] = [Math.abs(least), Math.abs(most)].sort((one, other) => one - other) as [number, number];
  // The same in words, though not to the last figure.
  const single = say(`face.${word}`, { mm: far }, voice);
  return single === say(`face.${word}`, { mm: near }, voice) ? single : say(`face.${word}.range`, { near, far }, voice);
}

/** Whether the joint goes together as designed. */
export function goesTogether(verdict: Verdict | null): boolean {
  return verdict === 'tight' || verdict === 'sliding' || verdict === 'loose';
}
