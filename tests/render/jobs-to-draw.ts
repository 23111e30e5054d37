import type { Cut, Frame, Job, NamedProfile } from '@fielded/core';

/** A named profile with the sizes that a shape needs. */
export function profile(shape: NamedProfile['shape'], sizes: Partial<NamedProfile>): NamedProfile {
  return { reach: 38, depth: 9, land: 0, shoulder: 0, balance: 0.5, ...sizes, shape };
}

/** A cut set where its profile is drawn, run flat under the stock unless told. */
export function cut(name: string, side: Cut['side'], shape: Cut['profile'], setting: Partial<Cut> = {}): Cut {
  return { name, side, profile: shape, depth: shape.depth, reach: shape.reach, run: 'under', tilt: 0, ...setting };
}

/** An invented door: 20 mm panel, ogee raise and back cove, in a 6.4 mm groove; any part can be replaced. */
export function job(changes: Partial<Job> & { frame?: Frame } = {}): Job {
  return {
    title: 'Boot-room cupboard doors',
    units: 'mm',
    panel: { thickness: 20, measured: 20, sawn: 'flat' },
    frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 },
    cuts: [
      cut('raise', 'front', profile('ogee', { land: 11, shoulder: 1.5 })),
      cut('back relief', 'back', profile('cove', { reach: 14, depth: 4.8, land: 9 }), { run: 'over' }),
    ],
    fit: { target: 0.2, snug: 0.05, loose: 0.5 },
    doors: [],
    ...changes,
  };
}

/** Joints that differ in kind, each with what makes it worth drawing. */
export const JOBS: Readonly<Record<string, Job>> = {
  'ogee and cove': job(),
  'bevel that wedges': job({
    title: 'Wedge-tongued bevel',
    cuts: [cut('bevel', 'front', profile('bevel', { reach: 40, depth: 14.9 }))],
  }),
  'too thick to enter': job({
    title: 'Panel left too thick',
    cuts: [cut('raise', 'front', profile('ovolo', { reach: 30, depth: 9, land: 10 }))],
  }),
  'inches with a back rebate': job({
    title: 'Larder doors, 3/4 in stock',
    units: 'in',
    panel: { thickness: 19.05, measured: 19.05, sawn: 'flat' },
    frame: { thickness: 19.05, groove: { width: 6.35, depth: 12.7, setback: 6.35 }, swellGap: 3.175 },
    cuts: [
      cut('raise', 'front', profile('bevel', { reach: 44.45, depth: 6.4, land: 12.7, shoulder: 1.5875 })),
      cut('back rebate', 'back', profile('rebate', { reach: 9.525, depth: 6.35 }), { run: 'over' }),
    ],
  }),
  'loose with sticking': job({
    title: 'Loose panel in a stuck frame',
    frame: {
      thickness: 22,
      groove: { width: 7, depth: 12, setback: 8 },
      swellGap: 3,
      sticking: profile('ovolo', { reach: 6, depth: 5, shoulder: 0.8 }),
    },
    cuts: [
      cut('cove', 'front', profile('cove', { reach: 32, depth: 10, land: 12, shoulder: 1 })),
      cut('back', 'back', profile('rebate', { reach: 12, depth: 4 })),
    ],
  }),
  'cuts that meet': job({
    title: 'No tongue left',
    cuts: [
      cut('raise', 'front', profile('ogee', { depth: 12 })),
      cut('back', 'back', profile('rebate', { reach: 20, depth: 9 })),
    ],
  }),
};
