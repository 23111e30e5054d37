import type { Job, Report, Units } from '@fielded/core';
import { readLoops } from '@fielded/geometry';
import type { JobChange } from '../job/changes.ts';
import type { Data } from '../job/data.ts';
import { findSize, type WrittenSize } from '../job/sizes.ts';

/** A point of the wood, mm: `panel` from its edge and front face, `frame` from its sight edge and front face; y down. */
interface WoodPoint {
  readonly on: 'panel' | 'frame';
  readonly x: number;
  readonly y: number;
}

/** One size that a handle moves along one axis. */
export interface Move {
  /** The value as drawings call it. */
  readonly of: string;
  readonly name: string;
  readonly mm: number;
  readonly least: number;
  readonly most: number;
  /** Change in this size, mm, per mm dragged right (or down). */
  readonly sense: 1 | -1;
}

/** An arris that can be taken hold of. */
export interface Handle {
  readonly key: string;
  readonly name: string;
  readonly at: WoodPoint;
  readonly level?: Move;
  readonly plumb?: Move;
  /** Which part of the drawing stays in place while this is moved. */
  readonly hold: 'panel' | 'frame';
}

/** The least and the greatest size that a hand can give, mm, where nothing else bounds it. */
const LEAST = 0.1;
const WIDEST = 300;

/** The arrises of the cuts, the groove and the stock. Plain faces are held `beyond` mm into the field, or behind the groove. */
export function findHandles(job: Job, report: Report, beyond: number, withFrame: boolean): Handle[] {
  const all = report.section.cuts.flatMap((_, index) => cutHandles(job, report, index));
  const cuts = all.length > MOST_CUT_HANDLES ? all.filter(standsOn(report)) : all;
  return [...cuts, stockHandle(job, report, beyond), ...(withFrame ? frameHandles(job, report, beyond) : [])];
}

/** So many handles of cuts are shown even where another cut has taken the arris. */
const MOST_CUT_HANDLES = 8;
/** So near an arris of the panel a handle stands on it, mm. */
const NEAR = 0.2;

/** Whether a handle stands on an arris of the panel: of many cuts, some take those of others. */
function standsOn({ section }: Report): (handle: Handle) => boolean {
  const curves = readLoops(section.outline).flatMap((loop) => loop.curves);
  return ({ at: { x, y } }) => curves.some(({ x0, y0 }) => Math.hypot(x0 - x, y0 - y) < NEAR);
}

function cutHandles(job: Job, report: Report, index: number): Handle[] {
  const cut = report.section.cuts[index]!;
  const profile = job.cuts[index]!.profile;
  const { thickness } = report.section;
  const front = cut.side === 'front';
  const sense = front ? 1 : -1;
  const down = (b: number) => (front ? b : thickness - b);
  const reach = move(`cuts[${index}].reach`, 'reach', cut.reach, [cut.land + LEAST, WIDEST]);
  const depth = move(`cuts[${index}].depth`, 'depth', cut.depth, [cut.shoulder + LEAST, thickness - LEAST], sense);
  const handle = (key: string, name: string, x: number, b: number, level?: Move, plumb?: Move): Handle => ({
    key: `cuts[${index}] ${key}`,
    name: `${cut.name}, ${name}`,
    at: { on: 'panel', x, y: down(b) },
    ...(level && { level }),
    ...(plumb && { plumb }),
    hold: 'panel',
  });
  if (profile.shape === 'rebate') return [handle('corner', 'inner corner', cut.reach, cut.depthCut, reach, depth)];
  if (profile.shape === 'outline')
    return [
      handle('field', 'end of the cut', cut.reach, 0, reach),
      handle('floor', 'deepest point', 0, cut.depthCut, undefined, depth),
    ];
  const mostShoulder = Math.max(0, cut.depth - LEAST);
  const shoulder = move(`cuts[${index}].profile.shoulder`, 'shoulder', cut.shoulder, [0, mostShoulder], sense);
  const land = move(`cuts[${index}].profile.land`, 'land', cut.land, [0, cut.reach - LEAST]);
  return [
    handle('field', 'arris at the field', cut.reach, cut.shoulder, reach, shoulder),
    handle('land', 'end of the land', cut.land, cut.depthCut, land, depth),
  ];
}

function stockHandle(job: Job, report: Report, beyond: number): Handle {
  const { thickness } = report.section;
  const x = Math.max(0, ...report.section.cuts.map(({ reach }) => reach)) + beyond;
  const of = job.panel.measured === job.panel.thickness ? 'panel.thickness' : 'panel.measured';
  const deepest = Math.max(0, ...report.section.cuts.map(({ depth }) => depth));
  return {
    key: 'stock',
    name: 'back of the stock',
    at: { on: 'panel', x, y: thickness },
    plumb: move(of, 'thickness', thickness, [deepest + LEAST, WIDEST]),
    hold: 'panel',
  };
}

function frameHandles(job: Job, report: Report, beyond: number): Handle[] {
  const { groove, thickness, swellGap } = job.frame;
  const deep = -groove.depth;
  const floor = groove.setback + groove.width;
  const at = 'frame.groove';
  const width = move(`${at}.width`, 'width', groove.width, [LEAST, thickness - groove.setback - LEAST]);
  const depth = move(`${at}.depth`, 'depth', groove.depth, [swellGap + LEAST, WIDEST], -1);
  const setback = move(`${at}.setback`, 'setback', groove.setback, [LEAST, thickness - groove.width - LEAST]);
  const back = move('frame.thickness', 'thickness', thickness, [floor + LEAST, WIDEST]);
  const gap = move('frame.swellGap', 'gap', swellGap, [0, groove.depth - LEAST]);
  const handle = (key: string, name: string, x: number, y: number, moves: Pick<Handle, 'level' | 'plumb'>): Handle => ({
    key,
    name,
    at: { on: 'frame', x, y },
    ...moves,
    hold: 'frame',
  });
  const { bottomGap, verdict } = report.fit;
  // Where the tongue stops short, its tip is not where the gap ends.
  const showsTip = bottomGap !== null && verdict !== 'stops-short';
  const middle = groove.setback + groove.width / 2;
  return [
    handle('groove floor', 'groove, back corner', deep, floor, { level: depth, plumb: width }),
    handle('groove front', 'groove, front corner', deep, groove.setback, { plumb: setback }),
    handle('frame back', 'back of the frame', deep - beyond, thickness, { plumb: back }),
    ...(showsTip ? [handle('tip', "panel's edge", deep + swellGap, middle, { level: gap })] : []),
  ];
}

/** The move of a size of `mm` within [least, most]; it grows to the right or down, or for `sense` -1 the other way. */
function move(of: string, name: string, mm: number, [least, most]: readonly [number, number], sense: 1 | -1 = 1): Move {
  return { of, name, mm, least, most, sense };
}

/** The moves of a handle that can be written into the job: a profile ground in steel has fewer. */
export function openMoves(handle: Handle, data: Data, job: Job, report: Report): { level?: Move; plumb?: Move } {
  const open = (move: Move | undefined) =>
    move !== undefined && findSize(data, job, report, move.of).size !== null ? move : undefined;
  const level = open(handle.level);
  const plumb = open(handle.plumb);
  return { ...(level && { level }), ...(plumb && { plumb }) };
}

/** What a move to `mm` writes into the job. */
export function moveChanges(
  move: Move,
  mm: number,
  sizes: { readonly data: Data; readonly job: Job; readonly report: Report },
  write: (mm: number, units?: Units) => Data,
): readonly JobChange[] {
  const { size } = findSize(sizes.data, sizes.job, sizes.report, move.of) as { size: WrittenSize | null };
  if (size === null) return [];
  return size.changes(Math.min(move.most, Math.max(move.least, mm)), write);
}
