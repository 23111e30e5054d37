import { type DoorHead, findHeadFault, type HeadFault } from '../door/head.ts';
import type { Desk } from './desk.ts';
import type { FileDoor, FileHead, Loose } from './job-file.ts';

/** A head's own keys: those of its shape, each given, and no others; undefined where one is missing or was struck out. */
export function completeHead(file: Loose<FileHead>, at: string, desk: Desk): DoorHead | undefined {
  if (file === undefined) return undefined;
  const { shape, rise, crown, ears } = file;
  for (const key of ['crown', 'ears'] as const) {
    if (shape === 'arch' && key in file)
      desk.report('key-not-used', `${at}.${key}`, `${at}.${key} is not used: an arch is one arc`, 'Take this line out');
    if (shape === 'cathedral' && !(key in file))
      desk.report(
        'missing-key',
        `${at}.${key}`,
        `${at}.${key} is missing`,
        `Add ${key}: and the radius of the ${key === 'crown' ? 'round arc in the middle' : 'hollow arcs beside it'}`,
      );
  }
  if (rise === undefined) return undefined;
  if (shape === 'arch') return { shape, rise };
  if (shape !== 'cathedral' || crown === undefined || ears === undefined) return undefined;
  return { shape, rise, crown, ears };
}

/** What keeps a head from standing over its opening, `width` by `height` mm; false where something does. */
export function checkHead(
  head: DoorHead,
  door: Pick<FileDoor, 'grain'> & { readonly columns: readonly unknown[] },
  opening: { readonly width: number; readonly height: number },
  at: string,
  desk: Desk,
): boolean {
  const { show, report } = desk;
  if (door.columns.length > 1) {
    report(
      'head-does-not-fit',
      at,
      `${at}: the top row has ${door.columns.length} openings`,
      'Shape a door of one column, or take head out',
    );
    return false;
  }
  if (door.grain === 'across') {
    report('head-does-not-fit', at, `${at}: a shaped head needs a panel whose grain runs up`, 'Take head or grain out');
    return false;
  }
  if (head.rise >= opening.height) {
    report(
      'head-does-not-fit',
      at,
      `${at}.rise, ${show(head.rise)}, is as much as the opening is high, ${show(opening.height)}`,
      'Write a smaller rise',
    );
    return false;
  }
  const fault = findHeadFault(head, opening.width);
  if (fault === null) return true;
  const [what, instead] = sayFault(fault, head, opening.width, desk);
  report('head-does-not-fit', at, `${at}: ${what}`, instead);
  return false;
}

function sayFault(fault: HeadFault, head: DoorHead, width: number, { show }: Desk): [what: string, instead: string] {
  const rise = show(head.rise);
  switch (fault) {
    case 'rise-past-half-circle':
      return [
        `a rise of ${rise} is more than half the opening's width of ${show(width)}`,
        'Write a rise of up to half the width',
      ];
    case 'rise-past-radii':
      return [`a rise of ${rise} is more than crown and ears together`, 'Write a smaller rise or larger radii'];
    case 'wider-than-opening':
      return [
        `crown and ears over a rise of ${rise} are wider than the opening of ${show(width)}`,
        'Write a smaller rise or smaller radii',
      ];
  }
}
