import type { FeedDirection, Rotation, Run } from './set-up-report.ts';

/** The hand of a knife: +1 cuts under the stock turning counterclockwise or over it clockwise, −1 the other two ways. */
export type Hand = 1 | -1;

/**
 * The hand that a run and a rotation, seen from above, ask for: k = s·r, s = +1 under and −1 over, r = +1 counterclockwise
 * (formula U1). Turning a head over changes both signs, so that its knives keep their hand.
 *
 * @example handOf('over', 'clockwise') === handOf('under', 'counterclockwise') // true
 */
export function handOf(run: Run, rotation: Rotation): Hand {
  return (run === 'under') === (rotation === 'counterclockwise') ? 1 : -1;
}

/** The feed against a rotation, as seen by the operator, who faces the fence: never with it. */
export function feedAgainst(rotation: Rotation): FeedDirection {
  return rotation === 'counterclockwise' ? 'right to left' : 'left to right';
}
