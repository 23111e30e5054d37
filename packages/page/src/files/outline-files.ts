import { readOutlineFile } from '@fielded/exchange';
import svgpath from 'svgpath';
import type { Desk } from '../desk/desk.ts';
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

/** Makes a drawing the outline of a cut, or says why it cannot be. */
export function useOutlineFile(desk: Desk, index: number, { name, text }: GivenFile): void {
  const path = readOutlineFile(name, text);
  if (typeof path !== 'string') {
    desk.notice.value = { kind: 'fault', text: `${name}: ${path.refused}. ${path.instead}.` };
    return;
  }
  const cut = desk.job.value.cuts[index];
  if (useOutline(desk, index, inUnits(path, desk.job.value.units)) && cut !== undefined)
    desk.notice.value = { kind: 'note', text: `${name} is now the outline of the ${cut.name}. Undo takes it back.` };
}

/** Gives a cut an outline of its own, path data in the job's unit. Whether the job can be made so; if not, it says why. */
export function useOutline(desk: Desk, index: number, path: string): boolean {
  const at = `cuts[${index}]`;
  const [fault] = desk.change([
    [`${at}.knife`, undefined],
    [`${at}.depth`, undefined],
    [`${at}.reach`, undefined],
    [`${at}.profile`, { shape: 'outline', path }],
  ]);
  if (fault) desk.notice.value = { kind: 'fault', text: `That outline cannot be cut: ${fault.message}` };
  return fault === undefined;
}

/** Path data in mm in another unit. */
function inUnits(path: string, units: 'mm' | 'in'): string {
  return units === 'mm'
    ? path
    : svgpath(path)
        .scale(1 / 25.4)
        .round(6)
        .toString();
}
