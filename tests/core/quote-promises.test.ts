// What a client is told of moving panels, by hand: 400 mm of flat-sawn cherry, tangential coefficient 0.00248 (Wood Handbook, table 13-5).
import { expect, it } from 'vitest';
import { evaluate, readJob } from '../../packages/core/src/index.ts';
import { listPromises } from '../../packages/core/src/quote/promises.ts';

const TANGENTIAL = 0.00248;

/** The promise about movement, of a panel made at 8 % that goes from 6 to 11 %. */
function movementOf(pinned: string) {
  const { job, faults } = readJob(`fielded: 1
panel: { thickness: 20, species: black cherry, width: 400 }
frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 }
season: { made: 8, driest: 6, dampest: 11, pinned: ${pinned} }
cuts:
  - { name: raise, side: front, profile: { shape: rebate, reach: 38, depth: 9 } }
  - { name: back, side: back, profile: { shape: rebate, reach: 14, depth: 4.8 } }
`);
  if (job === null) throw new Error(faults.map(({ message }) => message).join());
  const { promises } = listPromises(job, evaluate(job));
  return promises.find(({ sentence }) => sentence === 'movesWhole')!.figures as { across: number; margin: number };
}

it('the changes promised are what one edge of 400 mm of cherry moves: half of its width’s change, or all of it', () => {
  const whole = 400 * TANGENTIAL * (11 - 6);
  for (const [pinned, share] of [
    ['true', 0.5],
    ['edge', 1],
  ] as const) {
    const { across, margin } = movementOf(pinned);
    expect(across).toBeCloseTo(whole, 6);
    expect(margin).toBeCloseTo(share * whole, 6);
  }
});
