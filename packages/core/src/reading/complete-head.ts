import { curveBox, findSelfCrossing, flipCurve, joinBoxes } from '@fielded/geometry';
import { type DoorHead, findHeadFault, type HeadFault } from '../door/head.ts';
import { drawPath } from '../profile/outline-path.ts';
import type { Desk } from './desk.ts';
import type { FileDoor, FileHead, Loose } from './job-file.ts';

const KEYS = {
  arch: ['rise'],
  cathedral: ['rise', 'crown', 'ears'],
  outline: ['path'],
} as const;
const ALL_KEYS = ['rise', 'crown', 'ears', 'path'] as const;
const MEANS = {
  rise: 'how high it stands',
  crown: 'the radius of the round arc in the middle',
  ears: 'the radius of the hollow arcs beside it',
  path: 'SVG path data from the left side of the opening to the right',
};

/** A head's own keys: those of its shape, each given, and no others; undefined where one is missing or was struck out. */
export function completeHead(file: Loose<FileHead>, at: string, desk: Desk): DoorHead | undefined {
  if (file?.shape === undefined) return undefined;
  const { shape, rise, crown, ears, path } = file;
  const own: readonly string[] = KEYS[shape];
  for (const key of ALL_KEYS) {
    if (own.includes(key) && !(key in file))
      desk.report('missing-key', `${at}.${key}`, `${at}.${key} is missing`, `Add ${key}: and ${MEANS[key]}`);
    if (!own.includes(key) && key in file)
      desk.report(
        'key-not-used',
        `${at}.${key}`,
        `${at}.${key} is not used: shape: ${shape} has ${listWords(own)}`,
        'Take this line out',
      );
  }
  if (shape === 'outline') return path === undefined ? undefined : completeOutline(path, `${at}.path`, desk);
  if (rise === undefined) return undefined;
  if (shape === 'arch') return { shape, rise };
  return crown === undefined || ears === undefined ? undefined : { shape, rise, crown, ears };
}

function listWords(words: readonly string[]): string {
  return words.length === 1 ? words[0]! : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/** The path with y up from its lowest point. */
function completeOutline(path: string, at: string, desk: Desk): DoorHead | undefined {
  const drawn = drawPath(path, desk.units);
  if ('code' in drawn) {
    desk.report(drawn.code, at, `${at}: ${drawn.what}`, 'Write it like "M 0 60 A 510 510 0 0 1 480 60"');
    return undefined;
  }
  const box = joinBoxes(drawn.chain.map(curveBox));
  if (box === null || drawn.closed || box.y1 - box.y0 < 1e-6 || findSelfCrossing(drawn.chain) !== null) {
    const what = drawn.closed ? 'is closed' : box === null || box.y1 - box.y0 < 1e-6 ? 'is level' : 'crosses itself';
    desk.report(
      'head-does-not-fit',
      at,
      `${at}: the path ${what}`,
      'Draw an open path over the opening, left to right',
    );
    return undefined;
  }
  return { shape: 'outline', rise: box.y1 - box.y0, chain: drawn.chain.map((c) => flipCurve(c, box.y1)) };
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
    case 'not-the-opening':
      return [
        `the path does not run from one side of the opening to the other, ${show(width)}`,
        `Start it at x 0 and end it at ${show(width)}, between the two`,
      ];
    case 'turns-back':
      return [
        'the path turns back towards the left: its rail would hook under the panel and could not be put on',
        'Draw it from left to right all the way, upright at the most',
      ];
    case 'wider-than-opening':
      return [
        `crown and ears over a rise of ${rise} are wider than the opening of ${show(width)}`,
        'Write a smaller rise or smaller radii',
      ];
  }
}
