import type { Voice } from '../problem/language.ts';
import { say } from '../problem/say.ts';
import type { Simulation } from '../spread/simulation.ts';

/** The shares are of no unit. */
const PLAIN: Voice = { units: 'mm' };

/**
 * How many of the joints made at random bind, are tight, slide and rattle, and how they were spread, as a sentence; and another where
 * some bottom out.
 */
export function shareSentence(simulation: Simulation, voice: Voice = PLAIN): string {
  const { count, distribution, seed, shares, bottomsOut } = simulation;
  const { tight, sliding: slide, loose: rattle } = shares;
  const bind = shares['will-not-enter'] + shares['stops-short'];
  const verdicts = say(`shares.${distribution}`, { count, bind, tight, slide, rattle, seed }, voice);
  return bottomsOut > 0 ? `${verdicts} ${say('shares.bottom-out', { share: bottomsOut }, voice)}` : verdicts;
}

/**
 * A share, 0 to 1, in % for a sentence: to a tenth of a %, to a hundredth below 1 and above 99, and never as none or all where
 * it is neither.
 */
export function sayShare(share: number, voice: Voice = PLAIN): string {
  return say('figure.share', { share }, voice);
}
