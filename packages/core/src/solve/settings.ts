import type { Cut, Job } from '../job/job.ts';
import type { FileValue } from '../problem/problem.ts';
import type { SentenceKey } from '../problem/say.ts';
import { UnknownName } from './unknown-name.ts';

/** A move at the machine: a sentence of the catalogue. */
type Move = Extract<SentenceKey, `move.${string}`>;

/** A size that can be set, and how a job looks with it set otherwise. Lengths mm. */
export interface Setting {
  /** As asked for: `panel.thickness`, `frame.swellGap`, `back relief.depth`. */
  readonly name: string;
  readonly now: number;
  readonly least: number;
  readonly most: number;
  readonly set: (mm: number) => Job;
  /** Values of the job file that hold it, and what each becomes. */
  readonly writes: (mm: number) => readonly FileValue[];
  /** What to do at the machine to grow it, and to shrink it. */
  readonly grow: Move;
  readonly shrink: Move;
}

/** Cuts are not set shallower or narrower than this, mm: a scratch. */
export const SCRATCH = 1e-3;
/** The thickest stock, widest reach and deepest groove looked at, mm. */
const WIDEST = 300;

/** The names of everything in a job that can be set. */
export function settingNames(job: Job): string[] {
  return [
    ...sizeSettings(job).map(({ name }) => name),
    ...job.cuts.flatMap(({ name }) => [`${name}.depth`, `${name}.reach`]),
  ];
}

/** The setting of this name, or null where the job has none. A cut is named by its name or as `cuts[1]`. */
export function findSetting(job: Job, name: string): Setting | null {
  const size = sizeSettings(job).find((setting) => setting.name === name);
  if (size) return size;
  const key = name.endsWith('.depth') ? 'depth' : name.endsWith('.reach') ? 'reach' : null;
  if (key === null) return null;
  const called = name.slice(0, -key.length - 1);
  const index = job.cuts.findIndex((cut, place) => cut.name === called || called === `cuts[${place}]`);
  return index < 0 ? null : cutSetting(job, index, key);
}

/** The same; throws RangeError for a name that the job has no size of, the nearest named. */
export function needSetting(job: Job, name: string): Setting {
  const setting = findSetting(job, name);
  if (setting === null) throw new UnknownName('size', name, settingNames(job));
  return setting;
}

function cutSetting(job: Job, index: number, key: 'depth' | 'reach'): Setting {
  const cut = job.cuts[index]!;
  const [grow, shrink] = movesOf(cut, key);
  return {
    name: `${cut.name}.${key}`,
    now: cut[key],
    least: SCRATCH,
    most: key === 'depth' ? job.panel.measured : WIDEST,
    set: (mm) => ({ ...job, cuts: job.cuts.map((each, place) => (place === index ? { ...each, [key]: mm } : each)) }),
    writes: (mm) => [{ path: ['cuts', index, key], mm }],
    grow,
    shrink,
  };
}

/** What deepens or widens a cut, and what undoes it. Flat, the spindle sets the depth and the fence the reach; on edge the other way about. */
function movesOf({ tilt, run }: Cut, key: 'depth' | 'reach'): readonly [Move, Move] {
  const raise = ['move.raise', 'move.lower'] as const;
  const fence = ['move.fence-back', 'move.fence-forward'] as const;
  if (tilt === 0 && key === 'depth') return run === 'under' ? raise : [raise[1], raise[0]];
  if (tilt === 0) return fence;
  if (tilt === Math.PI / 2) return key === 'depth' ? fence : raise;
  return key === 'depth' ? ['move.deeper', 'move.less-deep'] : ['move.further-in', 'move.less-far-in'];
}

function sizeSettings(job: Job): Setting[] {
  const { panel, frame } = job;
  const { groove } = frame;
  const beyond = panel.measured - panel.thickness;
  const groovePart = (
    key: 'width' | 'depth' | 'setback',
    least: number,
    most: number,
    words: readonly [Move, Move],
  ) => ({
    name: `frame.groove.${key}`,
    now: groove[key],
    least,
    most,
    set: (mm: number) => ({ ...job, frame: { ...frame, groove: { ...groove, [key]: mm } } }),
    writes: (mm: number) => [{ path: ['frame', 'groove', key], mm }],
    grow: words[0],
    shrink: words[1],
  });
  return [
    {
      name: 'panel.thickness',
      now: panel.thickness,
      least: Math.max(SCRATCH, SCRATCH - beyond),
      most: WIDEST,
      // The stock and what the cutters are set for change together; a measured difference between them stays.
      set: (mm) => ({ ...job, panel: { ...panel, thickness: mm, measured: mm + beyond } }),
      writes: (mm) => [
        { path: ['panel', 'thickness'], mm },
        ...(beyond === 0 ? [] : [{ path: ['panel', 'measured'], mm: mm + beyond }]),
      ],
      grow: 'move.thicker-stock',
      shrink: 'move.thinner-stock',
    },
    {
      name: 'panel.measured',
      now: panel.measured,
      least: SCRATCH,
      most: WIDEST,
      set: (mm) => ({ ...job, panel: { ...panel, measured: mm } }),
      writes: (mm) => [{ path: ['panel', 'measured'], mm }],
      grow: 'move.thicker-alone',
      shrink: 'move.thinner-alone',
    },
    {
      name: 'frame.swellGap',
      now: frame.swellGap,
      least: 0,
      most: groove.depth - SCRATCH,
      set: (mm) => ({ ...job, frame: { ...frame, swellGap: mm } }),
      writes: (mm) => [{ path: ['frame', 'swellGap'], mm }],
      grow: 'move.smaller-panel',
      shrink: 'move.larger-panel',
    },
    groovePart('width', SCRATCH, frame.thickness - groove.setback, ['move.wider-groove', 'move.narrower-groove']),
    groovePart('depth', frame.swellGap + SCRATCH, WIDEST, ['move.deeper-groove', 'move.shallower-groove']),
    groovePart('setback', 0, frame.thickness - groove.width, ['move.groove-back', 'move.groove-forward']),
  ];
}
