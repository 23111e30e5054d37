import type { Cut, Job, Profile } from '@fielded/core';

/** A job as the content of a job file in millimetres, every size written out: what `readJobData` takes. */
export function jobData(job: Job): Record<string, unknown> {
  const { panel, frame, cuts, fit, season, doors } = job;
  return {
    fielded: 1,
    title: job.title,
    panel: { ...panel },
    frame: { ...frame, ...(frame.sticking && { sticking: profileData(frame.sticking) }) },
    cuts: cuts.map(cutData),
    fit,
    ...(season && { season }),
    ...(doors.length > 0 && { doors }),
  };
}

function cutData({ name, side, profile, depth, reach, run, tilt, head }: Cut): Record<string, unknown> {
  return {
    name,
    side,
    profile: profileData(profile),
    depth,
    reach,
    ...(tilt === Math.PI / 2 ? { presented: 'on-edge' } : { run, presented: (tilt * 180) / Math.PI }),
    ...(head !== undefined && { head }),
  };
}

function profileData(profile: Profile): Record<string, unknown> {
  if (profile.shape === 'outline') throw new RangeError('an outline cannot be written from its curves');
  const { shape, reach, depth, land, shoulder, balance } = profile;
  // A file is not to hold what the shape has no use for.
  if (shape === 'rebate') return { shape, reach, depth };
  return { shape, reach, depth, land, shoulder, ...(shape === 'ogee' && { balance }) };
}

/** The data with a value set at a path, as a hand would write it into the file. */
export function writeInto(data: unknown, [key, ...rest]: readonly (string | number)[], value: unknown): unknown {
  const copy = Array.isArray(data) ? [...data] : { ...(data as object) };
  const inner = (copy as Record<string | number, unknown>)[key!];
  (copy as Record<string | number, unknown>)[key!] = rest.length === 0 ? value : writeInto(inner ?? {}, rest, value);
  return copy;
}
