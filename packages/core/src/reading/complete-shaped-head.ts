import { curveBox, findSelfCrossing, flipCurve, joinBoxes } from '@fielded/geometry';
import { findShapedHeadFault, type ShapedHead, type ShapedHeadFault } from '../door/shaped-head.ts';
import { type FaultSentence, toldPart } from '../problem/say-fault.ts';
import { drawPath } from '../profile/draw-path.ts';
import type { FaultDesk } from './fault-desk.ts';
import type { FileDoor, FileShapedHead, Loose } from './job-file.ts';

const KEYS = {
  arch: ['rise'],
  cathedral: ['rise', 'crown', 'ears'],
  outline: ['path'],
} as const;
const ALL_KEYS = ['rise', 'crown', 'ears', 'path'] as const;

/** A shaped head's own keys: those of its shape, each given, and no others; undefined where one is missing or was struck out. */
export function completeShapedHead(file: Loose<FileShapedHead>, at: string, desk: FaultDesk): ShapedHead | undefined {
  if (file?.shape === undefined) return undefined;
  const { shape, rise, crown, ears, path } = file;
  const own: readonly string[] = KEYS[shape];
  for (const key of ALL_KEYS) {
    if (own.includes(key) && !(key in file)) {
      const figures = { key, means: toldPart(`head.${key}`, {}) };
      desk.report('fault.missing-key', `${at}.${key}`, figures, 'fault.missing-key.head.do');
    }
    if (!own.includes(key) && key in file)
      desk.report('fault.key-not-used.head', `${at}.${key}`, { shape, keys: listWords(own) });
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
function completeOutline(path: string, at: string, desk: FaultDesk): ShapedHead | undefined {
  const drawn = drawPath(path, desk.units);
  if ('sentence' in drawn) {
    desk.place({ ...drawn, remedy: 'fault.outline-unreadable.head.do' }, at);
    return undefined;
  }
  const box = joinBoxes(drawn.chain.map(curveBox));
  if (box === null || drawn.closed || box.y1 - box.y0 < 1e-6 || findSelfCrossing(drawn.chain) !== null) {
    const what = drawn.closed ? 'closed' : box === null || box.y1 - box.y0 < 1e-6 ? 'level' : 'crosses';
    desk.report(`fault.head-does-not-fit.${what}`, at, {});
    return undefined;
  }
  return { shape: 'outline', rise: box.y1 - box.y0, chain: drawn.chain.map((c) => flipCurve(c, box.y1)) };
}

/** What keeps a shaped head from standing over its opening, `width` by `height` mm; false where something does. */
export function checkShapedHead(
  shaped: ShapedHead,
  door: Pick<FileDoor, 'grain'> & { readonly columns: readonly unknown[] },
  opening: { readonly width: number; readonly height: number },
  at: string,
  desk: FaultDesk,
): boolean {
  const { columns, grain } = door;
  if (columns.length > 1) {
    desk.report('fault.head-does-not-fit.columns', at, { columns: columns.length });
    return false;
  }
  if (grain === 'across') {
    desk.report('fault.head-does-not-fit.grain', at, {});
    return false;
  }
  const { rise } = shaped;
  if (rise >= opening.height) {
    desk.report('fault.head-does-not-fit.height', at, { rise, height: opening.height });
    return false;
  }
  const fault = findShapedHeadFault(shaped, opening.width);
  if (fault === null) return true;
  desk.report(HEAD_FAULTS[fault], at, { rise, width: opening.width });
  return false;
}

const HEAD_FAULTS = {
  'rise-past-half-circle': 'fault.head-does-not-fit.half-circle',
  'rise-past-radii': 'fault.head-does-not-fit.radii',
  'not-the-opening': 'fault.head-does-not-fit.sides',
  'turns-back': 'fault.head-does-not-fit.turns-back',
  'wider-than-opening': 'fault.head-does-not-fit.wider',
} as const satisfies Readonly<Record<ShapedHeadFault, FaultSentence>>;
