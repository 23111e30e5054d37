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
      'mm' in write ? setLength(changed, write.path, write.mm) : setWord(changed, write.path, write.word),
    job,
  );
}

function setLength(job: Job, path: Writes[number]['path'], mm: number): Job {
  const [group, place, key, part] = path;
  const { frame, cuts } = job;
  if (group === 'frame' && typeof place === 'string') return { ...job, frame: setIn(frame, path.slice(1), mm) };
  if (group !== 'cuts' || typeof place !== 'number') throw new RangeError(`advice cannot write to ${path.join('.')}`);
  const changed = part === undefined ? { [key as string]: mm } : { profile: { ...cuts[place]!.profile, [part]: mm } };
  return { ...job, cuts: cuts.map((cut, k) => (k === place ? { ...cut, ...changed } : cut)) };
}

/** The group with the value at `path` in it set. */
function setIn<T>(group: T, [key, ...rest]: Writes[number]['path'], value: number | string): T {
  const inner = (group as Record<string, unknown>)[key as string];
  return { ...group, [key as string]: rest.length === 0 ? value : setIn(inner, rest, value) };
}

/** A word of the frame, or how a cut is presented. */
function setWord(job: Job, path: Writes[number]['path'], word: string): Job {
  const [group, place] = path;
  if (group === 'frame') return { ...job, frame: setIn(job.frame, path.slice(1), word) };
  return { ...job, cuts: job.cuts.map((cut, k) => (k === place ? { ...cut, tilt: TILTS[word] ?? cut.tilt } : cut)) };
}
