import type { Cut, Job } from '../job/job.ts';
import type { FileValue } from '../problem/problem.ts';
import { unknownName } from './unknown-name.ts';

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
  readonly grow: string;
  readonly shrink: string;
}

/** Cuts are not set shallower or narrower than this, mm: a scratch. */
const SCRATCH = 1e-3;
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
  if (setting === null) throw new RangeError(unknownName('a size to set', name, settingNames(job)));
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
function movesOf({ tilt, run }: Cut, key: 'depth' | 'reach'): readonly [string, string] {
  const raise = ['raise the spindle by {by}', 'lower the spindle by {by}'] as const;
  const fence = ['set the fence back by {by}', 'bring the fence forward by {by}'] as const;
  if (tilt === 0 && key === 'depth') return run === 'under' ? raise : [raise[1], raise[0]];
  if (tilt === 0) return fence;
  if (tilt === Math.PI / 2) return key === 'depth' ? fence : raise;
  return key === 'depth'
    ? ['set it {by} deeper', 'set it {by} less deep']
    : ['set it {by} further in', 'set it {by} less far in'];
}

function sizeSettings(job: Job): Setting[] {
  const { panel, frame } = job;
  const { groove } = frame;
  const beyond = panel.measured - panel.thickness;
  const groovePart = (
    key: 'width' | 'depth' | 'setback',
    least: number,
    most: number,
    words: readonly [string, string],
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
      grow: 'use stock {by} thicker, and set the cutters for it',
      shrink: 'plane the stock {by} thinner, and set the cutters for it',
    },
    {
      name: 'panel.measured',
      now: panel.measured,
      least: SCRATCH,
      most: WIDEST,
      set: (mm) => ({ ...job, panel: { ...panel, measured: mm } }),
      writes: (mm) => [{ path: ['panel', 'measured'], mm }],
      grow: 'use stock {by} thicker, and leave the cutters alone',
      shrink: 'plane the stock {by} thinner, and leave the cutters alone',
    },
    {
      name: 'frame.swellGap',
      now: frame.swellGap,
      least: 0,
      most: groove.depth - SCRATCH,
      set: (mm) => ({ ...job, frame: { ...frame, swellGap: mm } }),
      writes: (mm) => [{ path: ['frame', 'swellGap'], mm }],
      grow: 'make the panel {twice} smaller over all ({by} at each edge)',
      shrink: 'make the panel {twice} larger over all ({by} at each edge)',
    },
    groovePart('width', SCRATCH, frame.thickness - groove.setback, [
      'make the groove {by} wider',
      'make the groove {by} narrower',
    ]),
    groovePart('depth', frame.swellGap + SCRATCH, WIDEST, [
      'make the groove {by} deeper',
      'make the groove {by} shallower',
    ]),
    groovePart('setback', 0, frame.thickness - groove.width, [
      'set the groove {by} further back',
      'set the groove {by} nearer the front',
    ]),
  ];
}
