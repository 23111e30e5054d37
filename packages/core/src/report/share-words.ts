import type { Voice } from '../problem/language.ts';
import { say } from '../problem/say.ts';
import type { Simulation } from '../spread/simulation.ts';

/** The shares are of no unit. */
const PLAIN: Voice = { units: 'mm' };

/** How many of the joints made at random bind, are tight, slide and rattle, and how they were spread, as a sentence. */
export function shareSentence({ count, distribution, seed, shares }: Simulation, voice: Voice = PLAIN): string {
  const { tight, sliding: slide, loose: rattle } = shares;
  const bind = shares['will-not-enter'] + shares['stops-short'];
  return say(`shares.${distribution}`, { count, bind, tight, slide, rattle, seed }, voice);
}

/**
 * A share, 0 to 1, in % for a sentence: to a tenth of a %, to a hundredth below 1 and above 99, and never as none or all where
 * it is neither.
 */
export function sayShare(share: number, voice: Voice = PLAIN): string {
  return say('figure.share', { share }, voice);
}
