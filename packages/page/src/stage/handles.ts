import type { Job, Report, Units } from '@fielded/core';
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
  /** What a mm to the right, or down, does to it. */
  readonly sense: 1 | -1;
}

/** An arris that can be taken hold of. */
export interface Handle {
  readonly key: string;
  readonly name: string;
  readonly at: WoodPoint;
  readonly level?: Move;
  readonly plumb?: Move;
  /** What stays where it is on the sheet while this is moved. */
  readonly hold: 'panel' | 'frame';
}

const LEAST = 0.1;
const WIDEST = 300;

/** The arrises of the cuts, the groove and the stock. `beyond` is how far into the field or behind the groove plain faces are held, mm. */
export function findHandles(job: Job, report: Report, beyond: number, withFrame: boolean): Handle[] {
  const cuts = report.section.cuts.flatMap((_, index) => cutHandles(job, report, index));
  return [...cuts, stockHandle(job, report, beyond), ...(withFrame ? frameHandles(job, report, beyond) : [])];
}

function cutHandles(job: Job, report: Report, index: number): Handle[] {
  const cut = report.section.cuts[index]!;
  const profile = job.cuts[index]!.profile;
  const { thickness } = report.section;
  const front = cut.side === 'front';
  const sense = front ? 1 : -1;
  const down = (b: number) => (front ? b : thickness - b);
  const move = (of: string, name: string, mm: number, least: number, most: number, way: 1 | -1): Move => ({
    of,
    name,
    mm,
    least,
    most,
    sense: way,
  });
  const reach = move(`cuts[${index}].reach`, 'reach', cut.reach, cut.land + LEAST, WIDEST, 1);
  const depth = move(`cuts[${index}].depth`, 'depth', cut.depth, cut.shoulder + LEAST, thickness - LEAST, sense);
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
  const shoulder = move(
    `cuts[${index}].profile.shoulder`,
    'shoulder',
    cut.shoulder,
    0,
    Math.max(0, cut.depth - LEAST),
    sense,
  );
  const land = move(`cuts[${index}].profile.land`, 'land', cut.land, 0, cut.reach - LEAST, 1);
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
    plumb: { of, name: 'thickness', mm: thickness, least: deepest + LEAST, most: WIDEST, sense: 1 },
    hold: 'panel',
  };
}

function frameHandles(job: Job, report: Report, beyond: number): Handle[] {
  const { groove, thickness, swellGap } = job.frame;
  const deep = -groove.depth;
  const of = (key: string) => `frame.groove.${key}`;
  const width: Move = {
    of: of('width'),
    name: 'width',
    mm: groove.width,
    least: LEAST,
    most: thickness - groove.setback - LEAST,
    sense: 1,
  };
  const depth: Move = {
    of: of('depth'),
    name: 'depth',
    mm: groove.depth,
    least: swellGap + LEAST,
    most: WIDEST,
    sense: -1,
  };
  const setback: Move = {
    of: of('setback'),
    name: 'setback',
    mm: groove.setback,
    least: LEAST,
    most: thickness - groove.width - LEAST,
    sense: 1,
  };
  const back: Move = {
    of: 'frame.thickness',
    name: 'thickness',
    mm: thickness,
    least: groove.setback + groove.width + LEAST,
    most: WIDEST,
    sense: 1,
  };
  const handles: Handle[] = [
    {
      key: 'groove floor',
      name: 'groove, back corner',
      at: { on: 'frame', x: deep, y: groove.setback + groove.width },
      level: depth,
      plumb: width,
      hold: 'frame',
    },
    {
      key: 'groove front',
      name: 'groove, front corner',
      at: { on: 'frame', x: deep, y: groove.setback },
      plumb: setback,
      hold: 'frame',
    },
    {
      key: 'frame back',
      name: 'back of the frame',
      at: { on: 'frame', x: deep - beyond, y: thickness },
      plumb: back,
      hold: 'frame',
    },
  ];
  const { bottomGap, verdict } = report.fit;
  if (bottomGap === null || verdict === 'stops-short') return handles;
  const gap: Move = { of: 'frame.swellGap', name: 'gap', mm: swellGap, least: 0, most: groove.depth - LEAST, sense: 1 };
  const tip = { x: deep + swellGap, y: groove.setback + groove.width / 2 };
  return [...handles, { key: 'tip', name: "panel's edge", at: { on: 'frame', ...tip }, level: gap, hold: 'frame' }];
}

/** The handle's moves that the job really lets be written, each with how; a profile ground in steel has fewer. */
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
