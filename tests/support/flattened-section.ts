import type { Cut, Job, NamedProfile } from '@fielded/core';
import { areaPathsD, differenceD, FillRule, intersectD } from 'clipper2-ts';

type Path = { x: number; y: number }[];

/** Decimal places that the clipping library keeps. */
const PLACES = 7;
const FAR = 200;

/**
 * The section of a job worked out another way: profiles sampled from their definitions with `steps` chords to an
 * arc, and taken off the stock by a polygon clipping library.
 */
export function flattenedSection(job: Job, steps: number): { area: number; wood: Path[]; width: number } {
  const { measured } = job.panel;
  const width = Math.max(...job.cuts.map((cut) => cut.reach)) + 20;
  const stock: Path[] = [box(0, 0, width, measured)];
  // All at once: one cut after the other, what the first left is gone through again for each.
  const cleared = job.cuts.map((cut) => clearedPolygon(job, cut, steps));
  const wood = differenceD(stock, cleared, FillRule.NonZero, PLACES) as Path[];
  return { area: areaPathsD(wood), wood, width };
}

/** Area of one cut from the full stock alone. */
export function flattenedCutArea(job: Job, cut: Cut, steps: number): number {
  const width = Math.max(...job.cuts.map(({ reach }) => reach)) + 20;
  const stock: Path[] = [box(0, 0, width, job.panel.measured)];
  return areaPathsD(intersectD(stock, [clearedPolygon(job, cut, steps)], FillRule.NonZero, PLACES));
}

/** Lowest and highest point of the wood over [x0, x1]. */
export function heightSpan(wood: Path[], x0: number, x1: number): { least: number; most: number } {
  const slice = intersectD(wood, [box(x0, -FAR, x1, FAR)], FillRule.NonZero, PLACES) as Path[];
  const heights = slice.flat().map((p) => p.y);
  return { least: Math.min(...heights), most: Math.max(...heights) };
}

/** Sum over a sampled function at n and 2n chords with the leading error, which falls as 1/n², taken out (Richardson). */
export function extrapolated(at: (steps: number) => number, steps: number): number {
  const coarse = at(steps);
  const fine = at(2 * steps);
  return fine + (fine - coarse) / 3;
}

/**
 * What a named shape clears: all that lies outside its line, since it falls steadily from field to edge and any presentation sweeps it
 * as drawn. Every polygon runs the same way round, or two that overlap would cancel each other.
 */
function clearedPolygon(job: Job, cut: Cut, steps: number): Path {
  const { thickness, measured } = job.panel;
  const depth = cut.run === 'over' ? cut.depth + measured - thickness : cut.depth;
  const right = cut.reach - cut.profile.reach;
  const down = depth - cut.profile.depth;
  const drawn = samplePoints(cut.profile as NamedProfile, steps);
  const path = drawn.map(([a, b]) => ({ x: a + right, y: b + down }));
  const outside = [
    { x: path.at(-1)!.x, y: -FAR },
    { x: -FAR, y: -FAR },
    { x: -FAR, y: path[0]!.y },
  ];
  const cleared = [...path, ...outside];
  return cut.side === 'front' ? cleared.map(({ x, y }) => ({ x, y: measured - y })).reverse() : cleared;
}

/** Points of a named shape straight from its definition in words, arcs by angle about their centres. */
function samplePoints(profile: NamedProfile, steps: number): [number, number][] {
  const { shape, reach, depth, land, shoulder, balance } = profile;
  if (shape === 'rebate')
    return [
      [0, depth],
      [reach, depth],
      [reach, 0],
    ];
  const run = reach - land;
  const rise = depth - shoulder;
  const s = (run ** 2 + rise ** 2) / (2 * rise);
  const hollow = (k: number): [number, number][] => {
    const turn = 2 * Math.atan2(rise, run);
    return range(steps).map((t) => [land + k * s * Math.sin(t * turn), depth - k * s * (1 - Math.cos(t * turn))]);
  };
  const round = (k: number): [number, number][] => {
    const turn = 2 * Math.atan2(rise, run);
    return range(steps).map((t) => [
      reach - k * s * Math.sin((1 - t) * turn),
      shoulder + k * s * (1 - Math.cos((1 - t) * turn)),
    ]);
  };
  const raise: Record<string, () => [number, number][]> = {
    bevel: () => [
      [land, depth],
      [reach, shoulder],
    ],
    cove: () => hollow(1),
    ovolo: () => round(1),
    ogee: () => [...hollow(balance), ...round(1 - balance)],
  };
  return [[0, depth], ...raise[shape]!(), [reach, 0]];
}

function range(steps: number): number[] {
  return Array.from({ length: steps + 1 }, (_, i) => i / steps);
}

function box(x0: number, y0: number, x1: number, y1: number): Path {
  return [
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ];
}
