import type { Data } from './data.ts';

/** What a first visit opens on: a joint that is well made. */
export const EXAMPLE: Data = {
  fielded: 1,
  title: 'Boot-room cupboard doors',
  units: 'mm',
  panel: { thickness: 20 },
  frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 },
  cuts: [
    {
      name: 'raise',
      side: 'front',
      profile: { shape: 'ogee', reach: 38, depth: 9, land: 11, shoulder: 1.5 },
      run: 'under',
    },
    { name: 'back relief', side: 'back', profile: { shape: 'cove', reach: 14, depth: 4.8, land: 9 }, run: 'over' },
  ],
};

/** Stock and a groove, and a plain rebate on the face to begin with. */
export function startJob(units: 'mm' | 'in'): Data {
  if (units === 'in')
    return {
      fielded: 1,
      title: 'New job',
      units: 'in',
      panel: { thickness: '3/4' },
      frame: { thickness: '13/16', groove: { width: '1/4', depth: '7/16', setback: '9/32' }, swellGap: '1/16' },
      cuts: [
        { name: 'raise', side: 'front', profile: { shape: 'rebate', reach: '1-1/2', depth: '5/16' }, run: 'under' },
      ],
      fit: { target: 0.008, snug: 0.002, loose: 0.02 },
    };
  return {
    fielded: 1,
    title: 'New job',
    units: 'mm',
    panel: { thickness: 20 },
    frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 },
    cuts: [{ name: 'raise', side: 'front', profile: { shape: 'rebate', reach: 38, depth: 8 }, run: 'under' }],
  };
}
