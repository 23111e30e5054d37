import type { Report } from '@fielded/core';
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
  return evaluate({ ...randomJob(seed), doors: [door] });
}
