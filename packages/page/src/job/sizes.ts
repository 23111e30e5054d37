import type { Job, Report } from '@fielded/core';
import type { JobChange } from './changes.ts';
import { type Data, getAt } from './data.ts';

/** How a size shown on the drawing is written into the job; `mm` as moved, `written` as the file should keep it. */
export interface WrittenSize {
  /** The path in the job file that it is kept at. */
  readonly path: string;
  /** A size that another one follows from is turned into that one. */
  readonly changes: (mm: number, write: (mm: number) => Data, written?: Data) => readonly JobChange[];
}

/** What a shown value is: a size to type over, or worked out from others, with the reason. */
export type Editable =
  | { readonly size: WrittenSize; readonly fixed: null }
  | { readonly size: null; readonly fixed: string };

let ofDoors: (data: Data, report: Report, of: string) => Editable | null = () => null;

/** Has the sizes of doors found too: what knows them comes with the drawings of doors. */
export function addDoorSizes(find: typeof ofDoors): void {
  ofDoors = find;
}

/**
 * How the value at `of`, a path as the drawings give it, can be changed in a job.
 *
 * A depth or reach that a cut sets for itself is changed there, else in its profile; with a knife of the shop or a free
 * outline the setting is written, since the steel is as it is. What follows from one size alone is turned round: typing
 * over the insertion moves the swelling gap.
 */
export function findSize(data: Data, job: Job, report: Report, of: string): Editable {
  const plain = (path: string): Editable => ({ size: { path, changes: writeAt(path) }, fixed: null });
  const [, index, key] = /^cuts\[(\d+)\](?:\.profile)?\.(depth|reach|land|shoulder|balance)$/.exec(of) ?? [];
  if (index !== undefined && key !== undefined) return cutSize(data, job, Number(index), key);
  const [, made] = /^section\.cuts\[(\d+)\]\.depthCut$/.exec(of) ?? [];
  if (made !== undefined) {
    const cut = report.section.cuts[Number(made)]!;
    return turned(cutSize(data, job, Number(made), 'depth'), (mm) => mm - (cut.depthCut - cut.depth));
  }
  if (/^(panel\.(thickness|measured)|frame\.(thickness|swellGap|groove\.(width|depth|setback)))$/.test(of))
    return plain(of);
  const door = ofDoors(data, report, of);
  if (door !== null) return door;
  if (of === 'tongue.insertion') return turned(plain('frame.swellGap'), (mm) => job.frame.groove.depth - mm);
  if (of === 'fit.visibleMargin') return marginSize(data, job, report);
  return { size: null, fixed: FIXED[of] ?? 'This is worked out from the other sizes.' };
}

const FIXED: Readonly<Record<string, string>> = {
  'fit.clearance':
    'The clearance is what the groove leaves round the tongue. Make it fit moves a cut to get the one you want.',
  'fit.deepestInsertion': 'How far the tongue goes in follows from its shape: change the groove or a cut.',
  'fit.bottomGap': 'What is left at the bottom follows from where the tongue stops.',
  'tongue.thicknessAtTip': 'The tongue is what the cuts leave: change a depth.',
};

function cutSize(data: Data, job: Job, index: number, key: string): Editable {
  const own = `cuts[${index}].${key}`;
  const inProfile = `cuts[${index}].profile.${key}`;
  const cut = job.cuts[index];
  const setting = key === 'depth' || key === 'reach';
  const drawn = getAt(data, `cuts[${index}].profile`) !== undefined && cut?.profile.shape !== 'outline';
  const path = setting && (getAt(data, own) !== undefined || !drawn) ? own : inProfile;
  if (!setting && !drawn)
    return { size: null, fixed: 'This is ground into the knife: choose another, or draw the profile in the job.' };
  return { size: { path, changes: writeAt(path) }, fixed: null };
}

function marginSize(data: Data, job: Job, report: Report): Editable {
  const reaches = job.cuts.map(({ side, reach }) => (side === 'front' ? reach : -1));
  const widest = reaches.indexOf(Math.max(...reaches));
  return turned(cutSize(data, job, widest, 'reach'), (mm) => mm + report.tongue.insertion);
}

export function turned(editable: Editable, turn: (mm: number) => number): Editable {
  if (editable.size === null) return editable;
  const { path, changes } = editable.size;
  return { size: { path, changes: (mm, write) => changes(turn(mm), write) }, fixed: null };
}

export function writeAt(path: string): WrittenSize['changes'] {
  return (mm, write, written) => [[path, written ?? write(mm)]];
}
