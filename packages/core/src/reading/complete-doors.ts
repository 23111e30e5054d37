import { type HungIn, layOpenings, leafSize, type Size, shareOut } from '../door/door.ts';
import { type GroovedPart, groovedParts } from '../door/groove-room.ts';
import { DEFAULTS } from '../job/defaults.ts';
import { fillOpenings } from '../job/given-job.ts';
import type { Door } from '../job/job.ts';
import { checkHead, completeHead } from './complete-head.ts';
import { type Desk, figureOf } from './desk.ts';
import type { FileDoor, JobFile, Loose } from './job-file.ts';
import { MOST_HEAD_PIECES, MOST_PANELS } from './limits.ts';
import { joinPath } from './tree.ts';

/** Outlines over all doors: each is offset many times. */
function checkHeadPieces(doors: readonly Door[], desk: Desk): void {
  const pieces = doors.reduce((sum, { head }) => sum + (head?.shape === 'outline' ? head.chain.length : 0), 0);
  if (pieces <= MOST_HEAD_PIECES) return;
  const what = `doors: the outlines of their heads have ${pieces} lines and arcs, and up to ${MOST_HEAD_PIECES} are computed`;
  desk.report('too-many', 'doors', what, 'Draw them with fewer, or put doors into several jobs');
}

/** Whether the panels of all doors, told by their counts alone, are no more than are shared out. */
function checkPanelCount(files: Loose<JobFile['doors']>, desk: Desk): boolean {
  let panels = 0;
  for (const file of files ?? []) {
    const across = file?.columns?.length ?? file?.across ?? 1;
    const up = file?.rows?.length ?? file?.up ?? 1;
    panels += across * up * (file?.leaves ?? 1) * (file?.quantity ?? 1);
  }
  if (panels <= MOST_PANELS) return true;
  const what = `doors: they have ${panels} panels in all, and up to ${MOST_PANELS} are worked out`;
  desk.report('too-many', 'doors', what, 'Put doors into several jobs, or check their quantities');
  return false;
}

/** The doors with sizes and names filled in, checked for room for a panel and for a groove in every part of the frame. */
export function completeDoors(files: Loose<JobFile['doors']>, grooveDepth: number, desk: Desk): Door[] {
  if (!checkPanelCount(files, desk)) return [];
  const doors = (files ?? []).flatMap((file, index) => {
    const at = joinPath('doors', index);
    if (file === undefined) return [];
    const hungIn = readOpening(file, at, desk);
    const size = completeSize(file, hungIn, at, desk);
    checkCounts(file, at, desk);
    const head = completeHead(file.head, joinPath(at, 'head'), desk);
    if (size === null || hasHoles(file)) return [];
    const given = file as FileDoor;
    const { opening: _, hung: __, gap: ___, overlay: ____, between: _____, head: ______, ...own } = given;
    const door: Door = {
      ...own,
      ...size,
      ...fillOpenings(given),
      name: given.name ?? `door ${index + 1}`,
      ...(hungIn && { hungIn }),
    };
    checkParts(door, grooveDepth, at, desk);
    const stands = head !== undefined && checkHead(head, door, layOpenings(door)[0]!, joinPath(at, 'head'), desk);
    return [stands ? { ...door, head } : door];
  });
  checkHeadPieces(doors, desk);
  return doors;
}

/** Whether a value of the door was struck out because it could not be read. */
function hasHoles(file: Loose<FileDoor> & object): boolean {
  const struck = (value: unknown) => value === undefined || (Array.isArray(value) && value.includes(undefined));
  return Object.values(file).some(struck);
}

const OPENING_KEYS = ['hung', 'gap', 'overlay', 'between', 'leaves'] as const;

/** The carcase's opening with its defaults; keys that mean nothing as the door is given are refused. */
function readOpening(file: Loose<FileDoor> & object, at: string, desk: Desk): HungIn | undefined {
  const refuse = (key: string, why: string, instead: string) =>
    desk.report('key-not-used', `${at}.${key}`, `${at}.${key} is not used: ${why}`, instead);
  const { opening } = file;
  if (opening === undefined) {
    for (const key of OPENING_KEYS)
      if (key in file) refuse(key, 'the door has no opening', 'Give the opening, or take this line out');
    return undefined;
  }
  const hung = file.hung ?? DEFAULTS.hung;
  if (hung === 'overlay' && 'gap' in file) refuse('gap', 'the door is hung overlay', 'Write overlay: instead');
  if (hung === 'inset' && 'overlay' in file)
    refuse('overlay', 'the door is hung inset', 'Write hung: overlay, or gap:');
  if ((file.leaves ?? DEFAULTS.leaves) === 1 && 'between' in file)
    refuse('between', 'there is one leaf', 'Write leaves: 2, or take this line out');
  if (hung === 'overlay' && !('overlay' in file))
    desk.report(
      'missing-key',
      `${at}.overlay`,
      `${at}.overlay is missing: the door is hung overlay`,
      'Add overlay: and how far it laps over the carcase',
    );
  return {
    width: figureOf(opening.width),
    height: figureOf(opening.height),
    hung,
    gap: file.gap ?? DEFAULTS.doorGap,
    overlay: file.overlay ?? 0,
    between: file.between ?? DEFAULTS.between,
  };
}

/** The door's own size, as given or worked out from the opening; null where it cannot be. */
function completeSize(file: Loose<FileDoor> & object, hungIn: HungIn | undefined, at: string, desk: Desk): Size | null {
  if (hungIn === undefined) {
    for (const key of ['width', 'height'] as const) {
      if (key in file) continue;
      desk.report(
        'size-or-opening',
        `${at}.${key}`,
        `${at} has no ${key}`,
        'Give width and height of the door, or the opening of the carcase',
      );
    }
    const size = { width: figureOf(file.width), height: figureOf(file.height) };
    return Number.isNaN(size.width + size.height) ? null : size;
  }
  for (const key of ['width', 'height'] as const)
    if (key in file)
      desk.report('size-or-opening', `${at}.${key}`, `${at} has both a ${key} and an opening`, 'Keep one of them');
  const size = leafSize(hungIn, file.leaves ?? DEFAULTS.leaves);
  if (Number.isNaN(size.width + size.height)) return null;
  for (const key of ['width', 'height'] as const) {
    if (size[key] > 0) continue;
    desk.report(
      'door-too-small',
      `${at}.opening.${key}`,
      `${at}.opening.${key}, ${desk.show(hungIn[key])}, is filled up by the gaps: nothing is left for the door`,
      'Write a larger opening or smaller gaps',
    );
    return null;
  }
  return size;
}

/** `across` and `up` say the same as the length of `columns` and `rows`, where both are given. */
function checkCounts(file: Loose<FileDoor> & object, at: string, desk: Desk): void {
  for (const [count, list] of [
    ['across', 'columns'],
    ['up', 'rows'],
  ] as const) {
    const sizes = file[list];
    if (sizes === undefined || file[count] === undefined || file[count] === sizes.length) continue;
    desk.report(
      'key-not-used',
      `${at}.${count}`,
      `${at}.${count} is ${file[count]}, and ${list} lists ${sizes.length}`,
      `Take ${count} out: ${list} says how many there are`,
    );
  }
}

/** Every part wide enough for its groove, every opening larger than nothing. */
function checkParts(door: Door, grooveDepth: number, at: string, desk: Desk): void {
  const { stile, topRail, bottomRail, midRail, muntin, columns, rows, width, height } = door;
  if (columns.length > 1 && muntin === 0) reportMuntin('muntin', at, desk);
  else if (rows.length > 1 && midRail === 0) reportMuntin('midRail', at, desk);
  checkOpenings(width - 2 * stile, columns, muntin, 'width', 'stile', 'columns', door, at, desk);
  checkOpenings(height - topRail - bottomRail, rows, midRail, 'height', 'rail', 'rows', door, at, desk);
  for (const grooved of groovedParts(door)) checkGroove(grooved, grooveDepth, at, desk);
}

function reportMuntin(key: 'muntin' | 'midRail', at: string, desk: Desk): void {
  desk.report(
    'muntin-missing',
    `${at}.muntin`,
    `${at} has several panels and no muntin between them`,
    `Add ${key === 'muntin' ? 'muntin' : 'muntin: or midRail'}: and its width`,
  );
}

function checkOpenings(
  room: number,
  sizes: Door['columns'],
  parting: number,
  size: 'width' | 'height',
  part: 'stile' | 'rail',
  list: 'columns' | 'rows',
  door: Door,
  at: string,
  desk: Desk,
): void {
  const shares = shareOut(room, parting, sizes);
  const given = sizes.filter((one) => one !== 'rest');
  const over = door[size];
  // A size that was struck out for a fault of its own decides nothing here.
  if ([over, room, parting, ...given].some(Number.isNaN)) return;
  if (given.length === 0) {
    if (shares[0]! > 0) return;
    const count = sizes.length;
    const taken = over - room + (count - 1) * parting;
    const muntins = count > 1 && parting > 0 ? ` and ${count - 1} ${count === 2 ? 'muntin' : 'muntins'}` : '';
    desk.report(
      'door-too-small',
      `${at}.${size}`,
      `${at}.${size}, ${desk.show(over)}, leaves no room for a panel: two ${part}s${muntins} take ${desk.show(taken)}`,
      `Write a larger ${size} or narrower parts`,
    );
    return;
  }
  const needed = given.reduce((sum, one) => sum + one, 0) + (sizes.length - 1) * parting;
  const rest = given.length < sizes.length;
  if (rest ? shares.every((share) => share > 0) : Math.abs(needed - room) < 0.01) return;
  desk.report(
    'openings-overrun',
    `${at}.${list}`,
    rest || needed > room
      ? `${at}.${list} come to ${desk.show(needed)} with what parts them, and ${desk.show(room)} lies between the ${part}s`
      : `${at}.${list} come to ${desk.show(needed)} with what parts them, ${desk.show(room - needed)} less than lies between the ${part}s`,
    'Write smaller openings, or rest for one of them',
  );
}

function checkGroove({ part, room, bothEdges }: GroovedPart, depth: number, at: string, desk: Desk): void {
  if (!(depth >= room)) return;
  const path = `${at}.${part}`;
  const [width, why] = bothEdges ? [room * 2, 'from both its edges '] : [room, ''];
  desk.report(
    'groove-through-part',
    path,
    `${path}, ${desk.show(width)}, is cut through ${why}by a groove ${desk.show(depth)} deep`,
    `Write a wider ${part}, or a shallower groove`,
  );
}
