import type { Job, Report } from '@fielded/core';
import { evaluate } from '@fielded/core';
import { Random } from '../support/random.ts';
import { randomJob } from '../support/random-job.ts';

/** A random job with a random door, so that every view can be drawn. */
export function randomReport(seed: number): Report {
  const random = new Random(seed + 77_000);
  const [across, up] = [Math.ceil(random.between(0, 3)), Math.ceil(random.between(0, 3))];
  const part = () => Math.round(random.between(35, 110));
  const [stile, rail, muntin] = [part(), part(), part()];
  const width = 2 * stile + (across - 1) * muntin + across * random.between(90, 420);
  const height = 2 * rail + (up - 1) * muntin + up * random.between(120, 900);
  const door = { name: `${seed}`, quantity: 1, width, height, stile, rail, across, up, muntin };
  const job = randomJob(seed);
  return evaluate({ ...job, frame: { ...job.frame, ...arrises(job.frame, random) }, doors: [door] });
}

/** A sticking to which the rails are coped, and now and then something on the back's arris. */
function arrises({ thickness, groove }: Job['frame'], random: Random): Partial<Job['frame']> {
  const more = { land: 0, shoulder: 0, balance: 0.5 };
  const lip = thickness - groove.setback - groove.width;
  const reach = groove.depth * random.between(0.3, 0.9);
  const depth = Math.min(reach, groove.setback * random.between(0.3, 0.95));
  const sticking = { shape: random.unit() < 0.5 ? 'ovolo' : 'cove', reach, depth, ...more } as const;
  if (random.unit() < 0.6 || lip < 2) return { sticking };
  const profile = {
    shape: 'bevel',
    reach: random.between(2, 8),
    depth: lip * random.between(0.2, 0.9),
    ...more,
  } as const;
  return { sticking, backEdge: { profile } };
}
