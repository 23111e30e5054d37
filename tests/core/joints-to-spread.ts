import type { Cut, Job, Profile } from '@fielded/core';

/** A named profile with the usual nothing for what is left out. */
export function profile(
  shape: 'rebate' | 'bevel' | 'cove' | 'ovolo' | 'ogee',
  reach: number,
  depth: number,
  land = 0,
  shoulder = 0,
): Profile {
  return { shape, reach, depth, land, shoulder, balance: 0.5 };
}

/** A cut set where its profile is drawn, run under and flat unless told otherwise. */
export function cut(name: string, side: 'front' | 'back', shape: Profile, other: Partial<Cut> = {}): Cut {
  return { name, side, profile: shape, depth: shape.depth, reach: shape.reach, run: 'under', tilt: 0, ...other };
}

/** A plain raised panel: flat tongue 6.2 in a groove of 6.4, 9 mm in, cove relief on the back run over. */
export function plainJob(other: Partial<Job> = {}): Job {
  return {
    title: 'Plain',
    units: 'mm',
    panel: { thickness: 20, measured: 20, sawn: 'flat', species: 'black cherry', width: 400 },
    frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 },
    cuts: [
      cut('raise', 'front', profile('ogee', 38, 9, 11, 1.5)),
      cut('back relief', 'back', profile('cove', 14, 4.8, 9), { run: 'over' }),
    ],
    fit: { target: 0.2, snug: 0.05, loose: 0.5 },
    doors: [],
    ...other,
  };
}

/** A wedge: a bevel from 9 mm at the edge to 3 mm at 30 in, no land, so that every size along it matters. */
export function wedgeJob(other: Partial<Job> = {}): Job {
  return plainJob({
    cuts: [cut('bevel', 'front', profile('bevel', 30, 14, 0, 2))],
    frame: { thickness: 22, groove: { width: 10, depth: 11, setback: 8 }, swellGap: 2 },
    ...other,
  });
}

/** The plain job with a coat of 0.02 mm on each face of the tongue and the groove so much wider on both sides: its figures stay the same. */
export function coatedJob(other: Partial<Job> = {}): Job {
  const job = plainJob(other);
  const { panel, frame } = job;
  const groove = { ...frame.groove, width: frame.groove.width + 0.04, setback: frame.groove.setback - 0.02 };
  return { ...job, panel: { ...panel, film: 0.02 }, frame: { ...frame, groove } };
}
