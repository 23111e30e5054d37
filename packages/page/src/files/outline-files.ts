import { type Fault, formatLength } from '@fielded/core';
import { readOutlineFile } from '@fielded/exchange';
import svgpath from 'svgpath';
import type { Desk } from '../desk/desk.ts';
import type { JobChange } from '../job/changes.ts';
import { type Data, isGroup } from '../job/data.ts';
import { faultBeside } from '../words/plain-fault.ts';
import type { GivenFile } from './given-file.ts';

export { readOutlineFile };

type Load = (path: string) => ReturnType<typeof readOutlineFile>;

/** Replaces the drawings that profiles name by their outlines: the page holds the job in one piece. */
export function putOutlinesIn(data: Data, load: Load): Data {
  const units = isGroup(data) && data.units === 'in' ? 'in' : 'mm';
  const walk = (here: Data): Data => {
    if (Array.isArray(here)) return (here as readonly Data[]).map(walk);
    if (!isGroup(here)) return here;
    if (here.shape === 'outline' && typeof here.file === 'string') {
      const path = load(here.file);
      const { file: _, ...others } = here;
      if (typeof path === 'string') return { ...others, path: pathInUnits(path, units) };
    }
    return Object.fromEntries(Object.entries(here).map(([key, value]) => [key, walk(value)]));
  };
  return walk(data);
}

/** The place of an outline in the job: a cut, by its index, or the frame's sticking. */
export type OutlinePlace = number | 'sticking';

/** What the place is called in a sentence. */
export function placeName(desk: Desk, place: OutlinePlace): string {
  return place === 'sticking' ? 'sticking' : (desk.job.value.cuts[place]?.name ?? 'cut');
}

/** A cut that reaches in less than this, mm, was probably drawn in inches. */
const LEAST_REACH = 3;

/** Makes a drawing the outline of a place; a notice says what was done, or why it cannot be. Returns whether it was. */
export function useOutlineFile(desk: Desk, place: OutlinePlace, { name, text }: GivenFile): boolean {
  const path = readOutlineFile(name, text);
  if (typeof path !== 'string') {
    desk.notice.value = { kind: 'fault', text: `${name}: ${path.refused}. ${path.instead}.` };
    return false;
  }
  const { units } = desk.job.value;
  // A drawing that lies elsewhere on its paper is brought to the corner of edge and face.
  const moved = movedToCorner(path);
  const canBeCut = (each: string) => desk.check(outlineChanges(place, pathInUnits(each, units))).length === 0;
  const isMoved = moved !== null && !canBeCut(path) && canBeCut(moved);
  const taken = isMoved ? moved : path;
  if (!useOutline(desk, place, pathInUnits(taken, units))) return false;
  const reach = place === 'sticking' ? null : (desk.job.value.cuts[place]?.reach ?? null);
  const where = isMoved ? ', moved to where edge and face meet' : '';
  const saidOf = `${name} is now the outline of the ${placeName(desk, place)}${where}.`;
  desk.notice.value =
    reach !== null && reach < LEAST_REACH
      ? {
          kind: 'note',
          text: `${saidOf} It reaches in only ${formatLength(reach, desk.units.value)}: it may be drawn in inches.`,
          action: {
            name: 'Read it in inches',
            run: () => {
              if (useOutline(desk, place, pathInUnits(svgpath(taken).scale(25.4).toString(), units)))
                desk.notice.value = { kind: 'note', text: `${name} is read in inches now. Undo takes it back.` };
            },
          },
        }
      : { kind: 'note', text: `${saidOf} Undo takes it back.` };
  return true;
}

/** An outline moved so that its deep end lies at the edge, x = 0, and its other end on the face, y = 0; null where its deep end is not the left one. */
function movedToCorner(path: string): string | null {
  const ends: { x: number; y: number }[] = [];
  // A line of no length at its end, so that the last point is found whatever segment comes before.
  svgpath(`${path} l 0 0`)
    .abs()
    .iterate((segment) => {
      if (segment[0] === 'M' || segment[0] === 'L') ends.push({ x: Number(segment[1]), y: Number(segment[2]) });
    });
  const [first, last] = [ends[0]!, ends.at(-1)!];
  const [deep, face] = first.y > last.y ? [first, last] : [last, first];
  return deep.y > face.y && deep.x < face.x ? svgpath(path).translate(-deep.x, -face.y).toString() : null;
}

/** Gives a place an outline, path data in the job's unit. Returns whether the job can be made so; if not, a notice says why. */
function useOutline(desk: Desk, place: OutlinePlace, path: string): boolean {
  return useOutlines(desk, outlineChanges(place, path));
}

/** Gives a place an outline, and says in a notice what was taken. Returns whether the job can be made so. */
export function useOutlineAndSay(desk: Desk, place: OutlinePlace, path: string, what: string): boolean {
  const used = useOutline(desk, place, path);
  if (used)
    desk.notice.value = {
      kind: 'note',
      text: `${what} is now the outline of the ${placeName(desk, place)}. Undo takes it back.`,
    };
  return used;
}

/** Makes changes that bring outlines, in one step of undo. Returns whether the job can be made so; if not, a notice says why. */
export function useOutlines(desk: Desk, changes: readonly JobChange[]): boolean {
  const [fault] = desk.change(changes);
  if (fault) desk.notice.value = { kind: 'fault', text: sayUncut(fault, desk) };
  return fault === undefined;
}

/** Why an outline cannot be cut, without the place of the job file. */
function sayUncut(fault: Fault, desk: Desk): string {
  const said = faultBeside(fault, desk.units.value).replace(/^:\s*/, '');
  return `That outline cannot be cut: ${said[0]!.toLowerCase()}${said.slice(1)}`;
}

/** The changes that give a place an outline. */
export function outlineChanges(place: OutlinePlace, path: string): JobChange[] {
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

/** Path data in mm as path data in a unit. */
export function pathInUnits(path: string, units: 'mm' | 'in'): string {
  return units === 'mm'
    ? path
    : svgpath(path)
        .scale(1 / 25.4)
        .round(6)
        .toString();
}
