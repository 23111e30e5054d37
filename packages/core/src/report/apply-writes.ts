import type { Job } from '../job/job.ts';
import type { Advice } from '../problem/problem.ts';

type Writes = Advice['writes'];

/** The words of `presented` that advice gives, radians. */
const TILTS: Readonly<Record<string, number>> = { flat: 0, 'on-edge': Math.PI / 2 };

/**
 * The job with advice followed: what its file would read as with these values written into it.
 *
 * @throws RangeError for a place that no advice writes to.
 */
export function applyWrites(job: Job, writes: Writes): Job {
  return writes.reduce(
    (changed, write) =>
      'mm' in write ? setLength(changed, write.path, write.mm) : present(changed, write.path, write.word),
    job,
  );
}

function setLength(job: Job, path: Writes[number]['path'], mm: number): Job {
  const [group, place, key, part] = path;
  const { frame, cuts } = job;
  if (group === 'frame' && place === 'swellGap') return { ...job, frame: { ...frame, swellGap: mm } };
  if (group === 'frame' && place === 'groove')
    return { ...job, frame: { ...frame, groove: { ...frame.groove, [key as string]: mm } } };
  if (group !== 'cuts' || typeof place !== 'number') throw new RangeError(`advice cannot write to ${path.join('.')}`);
  return {
    ...job,
    cuts: cuts.map((cut, k) => {
      if (k !== place) return cut;
      if (key !== 'profile') return { ...cut, [key as string]: mm };
      return { ...cut, profile: { ...cut.profile, [part as string]: mm } };
    }),
  };
}

function present(job: Job, [, place]: Writes[number]['path'], word: string): Job {
  return { ...job, cuts: job.cuts.map((cut, k) => (k === place ? { ...cut, tilt: TILTS[word] ?? cut.tilt } : cut)) };
}
