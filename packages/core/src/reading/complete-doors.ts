import { type HungIn, layOpenings, leafSize, type Size, shareOut } from '../door/door.ts';
import { type GroovedPart, groovedParts } from '../door/groove-room.ts';
import { DEFAULTS } from '../job/defaults.ts';
import { fillOpenings } from '../job/fill-openings.ts';
import type { Door } from '../job/job.ts';
import { toldPart } from '../problem/say-fault.ts';
import { checkShapedHead, completeShapedHead } from './complete-shaped-head.ts';
import { type FaultDesk, orNaN } from './fault-desk.ts';
import type { FileDoor, JobFile, Loose } from './job-file.ts';
import { MOST_HEAD_PIECES, MOST_PANELS } from './limits.ts';
import { joinPath } from './tree.ts';

/** Outlines over all doors: each is offset many times. */
function checkHeadPieces(doors: readonly Door[], desk: FaultDesk): void {
  const pieces = doors.reduce((sum, { head }) => sum + (head?.shape === 'outline' ? head.chain.length : 0), 0);
  if (pieces > MOST_HEAD_PIECES) desk.report('fault.too-many.heads', 'doors', { pieces, most: MOST_HEAD_PIECES });
}

/** Whether there are few enough panels to share out, by the counts of the doors alone. */
function checkPanelCount(files: Loose<JobFile['doors']>, desk: FaultDesk): boolean {
  let panels = 0;
  for (const file of files ?? []) {
    const across = file?.columns?.length ?? file?.across ?? 1;
    const up = file?.rows?.length ?? file?.up ?? 1;
    panels += across * up * (file?.leaves ?? 1) * (file?.quantity ?? 1);
  }
  if (panels <= MOST_PANELS) return true;
  desk.report('fault.too-many.panels', 'doors', { panels, most: MOST_PANELS });
  return false;
}

/** The doors with sizes and names filled in, checked for room for a panel and for a groove in every part of the frame. */
export function completeDoors(files: Loose<JobFile['doors']>, grooveDepth: number, desk: FaultDesk): Door[] {
  if (!checkPanelCount(files, desk)) return [];
  const doors = (files ?? []).flatMap((file, index) => {
    const at = joinPath('doors', index);
    if (file === undefined) return [];
    const hungIn = readOpening(file, at, desk);
    const size = completeSize(file, hungIn, at, desk);
    checkCounts(file, at, desk);
    const head = completeShapedHead(file.head, joinPath(at, 'head'), desk);
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
    const stands = head !== undefined && checkShapedHead(head, door, layOpenings(door)[0]!, joinPath(at, 'head'), desk);
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
function readOpening(file: Loose<FileDoor> & object, at: string, desk: FaultDesk): HungIn | undefined {
  const refuse = (key: string, why: 'no-opening' | 'overlay' | 'inset' | 'one-leaf') =>
    desk.report(`fault.key-not-used.${why}`, `${at}.${key}`, {});
  const { opening } = file;
  if (opening === undefined) {
    for (const key of OPENING_KEYS) if (key in file) refuse(key, 'no-opening');
    return undefined;
  }
  const hung = file.hung ?? DEFAULTS.hung;
  if (hung === 'overlay' && 'gap' in file) refuse('gap', 'overlay');
  if (hung === 'inset' && 'overlay' in file) refuse('overlay', 'inset');
  if ((file.leaves ?? DEFAULTS.leaves) === 1 && 'between' in file) refuse('between', 'one-leaf');
  if (hung === 'overlay' && !('overlay' in file)) desk.report('fault.missing-key.overlay', `${at}.overlay`, {});
  return {
    width: orNaN(opening.width),
    height: orNaN(opening.height),
    hung,
    gap: file.gap ?? DEFAULTS.doorGap,
    overlay: file.overlay ?? 0,
    between: file.between ?? DEFAULTS.between,
    ...assumedGaps(file, hung),
  };
}

/** The gaps that decide a leaf's size and that the file does not give. */
function assumedGaps(file: Loose<FileDoor> & object, hung: HungIn['hung']): Pick<HungIn, 'assumed'> {
  const assumed: ('gap' | 'between')[] = [];
  if (hung === 'inset' && !('gap' in file)) assumed.push('gap');
  if ((file.leaves ?? DEFAULTS.leaves) > 1 && !('between' in file)) assumed.push('between');
  return assumed.length === 0 ? {} : { assumed };
}

/** The door's own size, as given or worked out from the opening; null where it cannot be. */
function completeSize(
  file: Loose<FileDoor> & object,
  hungIn: HungIn | undefined,
  at: string,
  desk: FaultDesk,
): Size | null {
  if (hungIn === undefined) {
    for (const key of ['width', 'height'] as const) {
      if (key in file) continue;
      desk.report('fault.size-or-opening.neither', `${at}.${key}`, { door: at, size: key });
    }
    const size = { width: orNaN(file.width), height: orNaN(file.height) };
    return Number.isNaN(size.width + size.height) ? null : size;
  }
  for (const key of ['width', 'height'] as const)
    if (key in file) desk.report('fault.size-or-opening.both', `${at}.${key}`, { door: at, size: key });
  const size = leafSize(hungIn, file.leaves ?? DEFAULTS.leaves);
  if (Number.isNaN(size.width + size.height)) return null;
  for (const key of ['width', 'height'] as const) {
    if (size[key] > 0) continue;
    desk.report('fault.door-too-small.opening', `${at}.opening.${key}`, { size: hungIn[key] });
    return null;
  }
  return size;
}

/** `across` and `up` say the same as the length of `columns` and `rows`, where both are given. */
function checkCounts(file: Loose<FileDoor> & object, at: string, desk: FaultDesk): void {
  for (const [count, list] of [
    ['across', 'columns'],
    ['up', 'rows'],
  ] as const) {
    const sizes = file[list];
    const counted = file[count];
    if (sizes === undefined || counted === undefined || counted === sizes.length) continue;
    const figures = { count: counted, listed: sizes.length, key: count, list };
    desk.report('fault.key-not-used.count', `${at}.${count}`, figures);
  }
}

/** Every part wide enough for its groove, every opening larger than nothing. */
function checkParts(door: Door, grooveDepth: number, at: string, desk: FaultDesk): void {
  const { stile, topRail, bottomRail, midRail, muntin, columns, rows, width, height } = door;
  if (columns.length > 1 && muntin === 0) reportMuntin('muntin', at, desk);
  else if (rows.length > 1 && midRail === 0) reportMuntin('midRail', at, desk);
  checkOpenings(width - 2 * stile, columns, muntin, 'width', 'stile', 'columns', door, at, desk);
  checkOpenings(height - topRail - bottomRail, rows, midRail, 'height', 'rail', 'rows', door, at, desk);
  for (const grooved of groovedParts(door)) checkGroove(grooved, grooveDepth, at, desk);
}

function reportMuntin(key: 'muntin' | 'midRail', at: string, desk: FaultDesk): void {
  const remedy = key === 'muntin' ? 'fault.muntin-missing.do' : 'fault.muntin-missing.rows.do';
  desk.report('fault.muntin-missing', `${at}.muntin`, { door: at }, remedy);
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
  desk: FaultDesk,
): void {
  const shares = shareOut(room, parting, sizes);
  const given = sizes.filter((one) => one !== 'rest');
  const over = door[size];
  // A size that was struck out for a fault of its own decides nothing here.
  if ([over, room, parting, ...given].some(Number.isNaN)) return;
  if (given.length === 0) {
    if (shares[0]! > 0) return;
    const muntins = parting > 0 ? sizes.length - 1 : 0;
    const taken = over - room + (sizes.length - 1) * parting;
    const parts =
      muntins > 1
        ? toldPart('door.stiles-muntins', { part, muntins })
        : toldPart(muntins === 1 ? 'door.stiles-muntin' : 'door.stiles', { part });
    desk.report('fault.door-too-small.stiles', `${at}.${size}`, { over, parts, taken, size });
    return;
  }
  const needed = given.reduce((sum, one) => sum + one, 0) + (sizes.length - 1) * parting;
  const rest = given.length < sizes.length;
  if (rest ? shares.every((share) => share > 0) : Math.abs(needed - room) < 0.01) return;
  if (rest || needed > room) desk.report('fault.openings-overrun.more', `${at}.${list}`, { needed, room, part });
  else desk.report('fault.openings-overrun.less', `${at}.${list}`, { needed, less: room - needed, part });
}

function checkGroove({ part, room, bothEdges }: GroovedPart, depth: number, at: string, desk: FaultDesk): void {
  if (!(depth >= room)) return;
  if (bothEdges) desk.report('fault.groove-through-part.both', `${at}.${part}`, { width: room * 2, depth, part });
  else desk.report('fault.groove-through-part', `${at}.${part}`, { width: room, depth, part });
}
