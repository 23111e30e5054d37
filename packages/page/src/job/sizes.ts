import type { Job, Report } from '@fielded/core';
import type { JobChange } from './changes.ts';
import { type Data, getAt } from './data.ts';

/** How a size shown on the drawing is written into the job. */
export interface WrittenSize {
  /** The path in the job file that it is kept at. */
  readonly path: string;
  /** What the size at `mm` changes; `write` writes a length as the file keeps it, `written` is the text that was typed. */
  readonly changes: (mm: number, write: (mm: number) => Data, written?: Data) => readonly JobChange[];
}

/** A value shown on a drawing: a size that can be typed over, or one that follows from others, with the reason in words. */
export type Editable =
  | { readonly size: WrittenSize; readonly fixed: null }
  | { readonly size: null; readonly fixed: string };

let ofDoors: (data: Data, report: Report, of: string) => Editable | null = () => null;

/** Sets what finds the sizes of doors: it is fetched with the drawings of doors. */
export function addDoorSizes(find: typeof ofDoors): void {
  ofDoors = find;
}

/**
 * How the value at `of`, a path as the drawings give it, can be changed in a job.
 *
 * A depth or reach that a cut sets for itself is changed there, else in its profile; with a knife of the shop or a free
 * outline the setting is written, since the steel is as it is. What follows from one size alone is turned round: typing
 * over the insertion moves the swell gap.
 */
export function findSize(data: Data, job: Job, report: Report, of: string): Editable {
  const [, index, key] = /^cuts\[(\d+)\](?:\.profile)?\.(depth|reach|land|shoulder|balance)$/.exec(of) ?? [];
  if (index !== undefined && key !== undefined) return cutSize(data, job, Number(index), key);
  const [, made] = /^section\.cuts\[(\d+)\]\.depthCut$/.exec(of) ?? [];
  if (made !== undefined) {
    const cut = report.section.cuts[Number(made)]!;
    return turned(cutSize(data, job, Number(made), 'depth'), (mm) => mm - (cut.depthCut - cut.depth));
  }
  if (/^(panel\.(thickness|measured)|frame\.(thickness|swellGap|groove\.(width|depth|setback)))$/.test(of))
    return plainSize(of);
  const door = ofDoors(data, report, of);
  if (door !== null) return door;
  if (of === 'tongue.insertion') return turned(plainSize('frame.swellGap'), (mm) => job.frame.groove.depth - mm);
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
  // A knife of the shop, or a free outline, has its shape in the steel.
  const drawn = getAt(data, `cuts[${index}].profile`) !== undefined && cut?.profile.shape !== 'outline';
  const path = setting && (getAt(data, own) !== undefined || !drawn) ? own : inProfile;
  if (!setting && !drawn)
    return { size: null, fixed: 'This is ground into the knife: choose another, or draw the profile in the job.' };
  return plainSize(path);
}

/** The margin shows what the widest front cut reaches beyond the insertion. */
function marginSize(data: Data, job: Job, report: Report): Editable {
  const reaches = job.cuts.map(({ side, reach }) => (side === 'front' ? reach : -1));
  const widest = reaches.indexOf(Math.max(...reaches));
  return turned(cutSize(data, job, widest, 'reach'), (mm) => mm + report.tongue.insertion);
}

/** A size that follows from another: what is typed for it is turned into the other by `turn`, mm to mm. */
export function turned(editable: Editable, turn: (mm: number) => number): Editable {
  if (editable.size === null) return editable;
  const { path, changes } = editable.size;
  return { size: { path, changes: (mm, write) => changes(turn(mm), write) }, fixed: null };
}

/** A size that stands in the job just as it is shown. */
export function plainSize(path: string): Editable {
  return { size: { path, changes: writeAt(path) }, fixed: null };
}

/** Changes the length at one path of the job. */
export function writeAt(path: string): WrittenSize['changes'] {
  return (mm, write, written) => [[path, written ?? write(mm)]];
}
