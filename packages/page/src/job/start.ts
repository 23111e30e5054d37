import type { Units } from '@fielded/core';
import type { Data } from './data.ts';

/** The joint that a first visit opens on. */
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

/** The same for shops that work in inches: flush at the face, the tongue a 64th thinner than the groove. */
export const INCH_EXAMPLE: Data = {
  fielded: 1,
  title: 'Boot-room cupboard doors',
  units: 'in',
  panel: { thickness: '3/4' },
  frame: { thickness: '13/16', groove: { width: '1/4', depth: '7/16', setback: '9/32' }, swellGap: '1/16' },
  cuts: [
    {
      name: 'raise',
      side: 'front',
      profile: { shape: 'ogee', reach: '1-1/2', depth: '9/32', land: '7/16', shoulder: '1/16' },
      run: 'under',
    },
    {
      name: 'back relief',
      side: 'back',
      profile: { shape: 'cove', reach: '5/8', depth: '15/64', land: '3/8' },
      run: 'over',
    },
  ],
};

/** Where shops work in inches, by the language of the browser. */
const INCH_LANDS = /-(?:US|CA|LR|MM)\b/i;

/** Whether lengths are usual in inches where this language is spoken. */
function usualUnits(language: string): Units {
  return INCH_LANDS.test(language) ? 'in' : 'mm';
}

/** The example for a first visit. */
export function exampleFor(language: string): Data {
  return usualUnits(language) === 'in' ? INCH_EXAMPLE : EXAMPLE;
}
