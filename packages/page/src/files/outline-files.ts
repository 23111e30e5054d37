import { readOutlineFile } from '@fielded/exchange';
import svgpath from 'svgpath';
import type { Change, Desk } from '../desk/desk.ts';
import { type Data, isGroup } from '../job/data.ts';
import type { GivenFile } from './given-file.ts';

export { readOutlineFile };

type Load = (path: string) => ReturnType<typeof readOutlineFile>;

/** Profiles that name a drawing have its outline in them instead: the page holds the job in one piece. */
export function putOutlinesIn(data: Data, load: Load): Data {
  const units = isGroup(data) && data.units === 'in' ? 'in' : 'mm';
  const walk = (here: Data): Data => {
    if (Array.isArray(here)) return (here as readonly Data[]).map(walk);
    if (!isGroup(here)) return here;
    if (here.shape === 'outline' && typeof here.file === 'string') {
      const path = load(here.file);
      const { file: _, ...others } = here;
      if (typeof path === 'string') return { ...others, path: inUnits(path, units) };
    }
    return Object.fromEntries(Object.entries(here).map(([key, value]) => [key, walk(value)]));
  };
  return walk(data);
}

/** Where in the job an outline belongs: to a cut, by its place in the list, or to the frame's sticking. */
export type OutlinePlace = number | 'sticking';

/** What the place is called. */
export function placeName(desk: Desk, place: OutlinePlace): string {
  return place === 'sticking' ? 'sticking' : (desk.job.value.cuts[place]?.name ?? 'cut');
}

/** Makes a drawing the outline of a place, or says why it cannot be. */
export function useOutlineFile(desk: Desk, place: OutlinePlace, { name, text }: GivenFile): void {
  const path = readOutlineFile(name, text);
  if (typeof path !== 'string') {
    desk.notice.value = { kind: 'fault', text: `${name}: ${path.refused}. ${path.instead}.` };
    return;
  }
  if (useOutline(desk, place, inUnits(path, desk.job.value.units)))
    desk.notice.value = {
      kind: 'note',
      text: `${name} is now the outline of the ${placeName(desk, place)}. Undo takes it back.`,
    };
}

/** Gives a place an outline of its own, path data in the job's unit. Whether the job can be made so; if not, it says why. */
export function useOutline(desk: Desk, place: OutlinePlace, path: string): boolean {
  return useOutlines(desk, outlineChanges(place, path));
}

/** Makes changes that bring outlines, in one step of undo. Whether the job can be made so; if not, it says why. */
export function useOutlines(desk: Desk, changes: readonly Change[]): boolean {
  const [fault] = desk.change(changes);
  if (fault) desk.notice.value = { kind: 'fault', text: `That outline cannot be cut: ${fault.message}` };
  return fault === undefined;
}

/** What an outline of its own changes at a place. */
export function outlineChanges(place: OutlinePlace, path: string): Change[] {
  const profile = { shape: 'outline', path };
  if (place === 'sticking')
    return [
      ['frame.sticking.reach', undefined],
      ['frame.sticking.depth', undefined],
      ['frame.sticking.land', undefined],
      ['frame.sticking.shoulder', undefined],
      ['frame.sticking.balance', undefined],
      ['frame.sticking.shape', 'outline'],
      ['frame.sticking.path', path],
    ];
  const at = `cuts[${place}]`;
  return [
    [`${at}.knife`, undefined],
    [`${at}.depth`, undefined],
    [`${at}.reach`, undefined],
    [`${at}.profile`, profile],
  ];
}

/** Path data in mm in another unit. */
export function inUnits(path: string, units: 'mm' | 'in'): string {
  return units === 'mm'
    ? path
    : svgpath(path)
        .scale(1 / 25.4)
        .round(6)
        .toString();
}
