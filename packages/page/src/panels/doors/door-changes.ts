import type { Job } from '@fielded/core';
import type { Desk } from '../../desk/desk.ts';
import type { JobChange } from '../../job/changes.ts';
import { type Data, getAt } from '../../job/data.ts';

type Door = NonNullable<Job['doors']>[number];

/** Which way panels are counted, and the list that gives their sizes one by one. */
export type Count = 'across' | 'up';
const LISTS = { across: 'columns', up: 'rows' } as const;

/** The sizes of a row's or column's openings as the job gives them; all `rest` where it only counts them. */
export function givenSizes(data: Data, at: string, count: Count, number: number): readonly Data[] {
  const list = getAt(data, `${at}.${LISTS[count]}`);
  return Array.isArray(list) ? list : Array.from({ length: number }, () => 'rest');
}

/** The path of one of these sizes. */
export function sizePath(at: string, count: Count, index: number): string {
  return `${at}.${LISTS[count]}[${index}]`;
}

/** The changes that give openings these sizes: a list, or their number alone where all share the rest. */
export function sizesChanges(at: string, count: Count, sizes: readonly Data[]): readonly JobChange[] {
  const list = `${at}.${LISTS[count]}`;
  const plain = sizes.length === 1 || sizes.every((size) => size === 'rest');
  return plain
    ? [
        [list, undefined],
        [`${at}.${count}`, sizes.length],
      ]
    : [
        [`${at}.${count}`, undefined],
        [list, sizes],
      ];
}

/** The changes for more or fewer panels: those added share the rest. A job without muntins gets them as wide as the stiles. */
export function countChanges(desk: Desk, door: Door, at: string, count: Count) {
  return (_: string, number: number): readonly JobChange[] => {
    const { data } = desk.doc.value;
    const sizes = givenSizes(data, at, count, door[count]);
    const kept = sizes.slice(0, number);
    // One opening has to be the rest: sizes given for all would fill the door only by chance.
    const next: Data[] =
      number > sizes.length
        ? [...sizes, ...Array.from({ length: number - sizes.length }, () => 'rest')]
        : kept.includes('rest')
          ? [...kept]
          : [...kept.slice(0, -1), 'rest'];
    const needs = number > 1 && getAt(data, `${at}.muntin`) === undefined;
    const stile = getAt(data, `${at}.stile`) ?? door.stile;
    return [...sizesChanges(at, count, next), ...(needs ? [[`${at}.muntin`, stile] as const] : [])];
  };
}

/** The changes for a number of leaves; a single one has no gap between leaves. */
export function leavesChanges(at: string) {
  return (path: string, leaves: number): readonly JobChange[] => [
    [path, leaves],
    ...(leaves === 1 ? [[`${at}.between`, undefined] as const] : []),
  ];
}

/** The changes for how a leaf is hung: an overlay needs how far it laps over, an inset has a gap all round. */
export function hungChanges(at: string, hung: string, desk: Desk): readonly JobChange[] {
  const lap = desk.job.value.units === 'in' ? '1/2' : 12;
  return hung === 'overlay'
    ? [
        [`${at}.hung`, 'overlay'],
        [`${at}.overlay`, lap],
        [`${at}.gap`, undefined],
      ]
    : [
        [`${at}.hung`, 'inset'],
        [`${at}.overlay`, undefined],
      ];
}

/** The changes that give a door by the opening it hangs in instead of by its own size, or the other way round. */
export function sizedByOther(desk: Desk, door: Door, at: string, byOpening: boolean): readonly JobChange[] {
  const write = (mm: number): Data => inUnits(mm, desk.job.value.units, 5);
  if (byOpening)
    return [
      ...(['opening', 'hung', 'gap', 'overlay', 'between', 'leaves'] as const).map(
        (key) => [`${at}.${key}`, undefined] as const,
      ),
      [`${at}.width`, write(door.width)],
      [`${at}.height`, write(door.height)],
    ];
  const GAP = 2;
  return [
    [`${at}.width`, undefined],
    [`${at}.height`, undefined],
    [`${at}.opening`, { width: write(door.width + 2 * GAP), height: write(door.height + 2 * GAP) }],
    [`${at}.hung`, 'inset'],
  ];
}

/** A length in the file's unit, to 0.001 mm or to `places` decimals of an inch. */
function inUnits(mm: number, units: 'mm' | 'in', places: number): number {
  return Number((units === 'in' ? mm / 25.4 : mm).toFixed(units === 'in' ? places : 3));
}

/** The changes that give a door a head of a shape, in round figures: an eighth of its opening high, or as high as the head before. */
export function headChanges(desk: Desk, door: Door, at: string, shape: string, opening: number): readonly JobChange[] {
  const { units } = desk.job.value;
  const round = (mm: number) => (units === 'in' ? Math.round((mm / 25.4) * 8) / 8 : Math.round(mm));
  const head = door.head;
  const rise = round(head?.rise ?? opening / 8);
  if (shape === 'none') return [[`${at}.head`, undefined]];
  if (shape === 'arch') return [[`${at}.head`, { shape, rise }]];
  if (shape === 'cathedral')
    return [[`${at}.head`, { shape, rise, crown: round(opening * 0.3), ears: round(opening * 0.2) }]];
  const width = inUnits(opening, units, 5);
  if (shape === 'pointed') return [[`${at}.head`, { shape: 'outline', path: pointedPath(width, rise) }]];
  const radius = Number(((width ** 2 / 4 + rise ** 2) / (2 * rise)).toFixed(5));
  return [[`${at}.head`, { shape, path: `M 0 ${rise} A ${radius} ${radius} 0 0 1 ${width} ${rise}` }]];
}

/** The share of its chord's slope that an arc of a pointed head still has at the point. */
const LEFT_AT_POINT = 0.4;

/** Two arcs alike that meet in a point over the middle of an opening, in the unit of `width` and `rise`. */
function pointedPath(width: number, rise: number): string {
  const chord = Math.hypot(width / 2, rise);
  const turn = (1 - LEFT_AT_POINT) * Math.atan2(rise, width / 2);
  const radius = Number((chord / (2 * Math.sin(turn))).toFixed(5));
  const arc = `A ${radius} ${radius} 0 0 1`;
  return `M 0 ${rise} ${arc} ${width / 2} 0 ${arc} ${width} ${rise}`;
}

/** Whether the outline of a head is one that `pointedPath` writes. */
export function isPointed(path: Data | undefined): boolean {
  return /^M 0 \S+ (A (\S+) \2 0 0 1) \S+ 0 \1 \S+ \S+$/.test(String(path ?? ''));
}
