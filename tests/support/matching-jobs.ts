import type { Job, NamedProfile, ShopKnife } from '@fielded/core';
import { raiser, rules } from './heads.ts';
import type { Random } from './random.ts';
import { randomProfile } from './random-job.ts';

/** A job of one raise, with a shop of these knives, one head and one machine. */
export function jobOfOneCut(
  profile: NamedProfile,
  depth: number,
  reach: number,
  knives: Record<string, ShopKnife>,
): Job {
  const machine = {
    speeds: [4500, 6000],
    seat: [-90, 90] as const,
    opening: 220,
    nutDiameter: 40,
    reversing: true,
    feeds: [6],
    rings: [220],
    tilt: [0, 0] as const,
  };
  return {
    title: 'One cut',
    units: 'mm',
    panel: { thickness: 24, measured: 24, sawn: 'flat' },
    frame: { thickness: 24, groove: { width: 6, depth: 11, setback: 7 }, swellGap: 2 },
    cuts: [{ name: 'raise', side: 'front', profile, depth, reach, run: 'under', tilt: 0 }],
    fit: { target: 0.2, snug: 0.05, loose: 0.5 },
    doors: [],
    shop: { units: 'mm', knives, heads: { raiser }, machines: { main: machine }, rules },
  };
}

/** A knife kept in the raiser head. */
export function kept(profile: NamedProfile): ShopKnife {
  return { profile, head: 'raiser', measured: 'wood' };
}

/** A raise to be matched with so many knives of a shop. */
export function jobWithKnives(random: Random, count: number): Job {
  const knives = Object.fromEntries(
    Array.from({ length: count }, (_, k) => [`knife ${k}`, kept(randomProfile(random, 12))]),
  );
  return jobOfOneCut(randomProfile(random, 12), 9, 30, knives);
}
