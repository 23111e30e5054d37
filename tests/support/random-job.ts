import type { Cut, Job, NamedProfile, Profile } from '@fielded/core';
import { Random } from './random.ts';

const SHAPES = ['rebate', 'bevel', 'cove', 'ovolo', 'ogee'] as const;

/** How two cuts or a cut and the stock are made to line up: not at all, exactly, or off by a hair. */
export type Alignment = 'free' | 'exact' | 'near';

/** A job that reads without faults, drawn from a seed: every shape, both faces and runs, shifted settings, odd stock. */
export function randomJob(seed: number, alignment: Alignment = 'free'): Job {
  const random = new Random(seed);
  const thickness = Math.round(random.between(16, 32));
  const measured = random.unit() < 0.5 ? thickness : thickness + random.between(-0.4, 0.4);
  const front = randomCut(random, 'front', thickness, 0.62);
  const cuts: Cut[] = [front];
  if (random.unit() < 0.85) cuts.push(randomCut(random, 'back', thickness, 0.32));
  if (random.unit() < 0.3) cuts.push(randomCut(random, random.oneOf(['front', 'back']), thickness, 0.3));
  if (alignment !== 'free' && cuts.length > 1) alignCuts(random, cuts, alignment === 'near');
  const frameThickness = thickness + 4;
  return {
    title: `Random job ${seed}`,
    units: random.oneOf(['mm', 'in']),
    panel: { thickness, measured, sawn: 'flat' },
    frame: {
      thickness: frameThickness,
      groove: { width: random.between(5, 10), depth: random.between(8, 14), setback: random.between(3, 7) },
      swellGap: random.between(0.5, 3),
    },
    cuts,
    fit: { target: 0.2, snug: 0.05, loose: 0.5 },
    doors: [],
  };
}

/** A named profile that can be drawn: land within reach, shoulder within depth, arcs within a quarter circle. */
export function randomProfile(random: Random, deepest: number): NamedProfile {
  const shape = random.oneOf(SHAPES);
  const depth = random.between(1, deepest);
  const shoulder = random.unit() < 0.3 ? 0 : random.between(0, depth * 0.5);
  const rise = depth - shoulder;
  const land = random.unit() < 0.3 ? 0 : random.between(0, 14);
  const exactQuarter = random.unit() < 0.1;
  const run = exactQuarter ? rise : rise + random.between(0.01, 30);
  return { shape, reach: land + run, depth, land, shoulder, balance: random.between(0.1, 0.9) };
}

function randomCut(random: Random, side: 'front' | 'back', thickness: number, share: number): Cut {
  const profile: Profile = randomProfile(random, thickness * share);
  const shifted = random.unit() < 0.4;
  const tilt = random.unit() < 0.6 ? 0 : random.oneOf([Math.PI / 2, random.between(0.05, 1.5)]);
  return {
    name: `${side} ${profile.shape}`,
    side,
    profile,
    depth: shifted ? profile.depth * random.between(0.7, 1.2) : profile.depth,
    reach: shifted ? profile.reach * random.between(0.8, 1.2) : profile.reach,
    run: tilt === Math.PI / 2 ? 'under' : random.oneOf(['under', 'over']),
    tilt,
  };
}

/** Makes the second cut end where the first does, meet its land, or come a hair short of it. */
function alignCuts(random: Random, cuts: Cut[], near: boolean): void {
  const first = cuts[0]!;
  const second = cuts[1]!;
  const hair = near ? random.oneOf([-1, 1]) * 10 ** random.between(-9, -5) : 0;
  const way = random.oneOf(['reach', 'land', 'copy', 'depth']);
  if (way === 'reach') cuts[1] = { ...second, reach: first.reach + hair };
  if (way === 'land' && second.profile.shape !== 'outline' && first.profile.shape !== 'outline') {
    cuts[1] = { ...second, reach: second.profile.reach + first.profile.land - second.profile.land + hair };
  }
  if (way === 'copy') cuts[1] = { ...first, name: 'again', depth: first.depth + hair };
  if (way === 'depth')
    cuts[1] = { ...second, side: first.side, run: first.run, tilt: first.tilt, depth: first.depth + hair };
}
