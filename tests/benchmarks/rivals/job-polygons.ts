import type { Job } from '@fielded/core';
import type { Curve } from '@fielded/geometry';
import { depthTaken } from '../../../packages/core/src/machining/datum.ts';

/** A cut as a closed region in section coordinates: its line as curves, closed by straight lines outside the stock. */
export interface Region {
  readonly curves: readonly Curve[];
}

/** A point as [x, y]. */
export type Point = [number, number];

const OUT = 5;

/** The two cuts of a benchmark job (front first) as regions with true arcs, and the stock's size. */
export function regionsOf(job: Job): { width: number; thickness: number; regions: Region[] } {
  const thickness = job.panel.measured;
  const width = Math.max(...job.cuts.map(({ reach }) => reach)) + 20;
  const regions = job.cuts.map((cut) => {
    if (cut.profile.shape !== 'outline' || depthTaken(cut, job.panel) !== cut.profile.depth) {
      throw new RangeError('benchmark jobs are free outlines at their drawn setting');
    }
    const place = (c: Curve): Curve =>
      cut.side === 'back'
        ? c
        : {
            ...c,
            y0: thickness - c.y0,
            y1: thickness - c.y1,
            cy: c.turn === 0 ? 0 : thickness - c.cy,
            turn: -c.turn as Curve['turn'],
          };
    const chain = cut.profile.chain.map(place);
    const first = chain[0]!;
    const last = chain.at(-1)!;
    const away = cut.side === 'front' ? thickness + OUT : -OUT;
    const corners: Point[] = [
      [last.x1, last.y1],
      [last.x1, away],
      [-OUT, away],
      [-OUT, first.y0],
      [first.x0, first.y0],
    ];
    return { curves: [...chain, ...corners.slice(1).map((to, i) => straight(corners[i]!, to))] };
  });
  return { width, thickness, regions };
}

function straight([x0, y0]: Point, [x1, y1]: Point): Curve {
  return { x0, y0, x1, y1, cx: 0, cy: 0, r: 0, turn: 0 };
}

/** A region's boundary as points, its arcs as chords that keep within `tolerance` mm of them. */
export function flatten({ curves }: Region, tolerance: number): Point[] {
  const points: Point[] = [];
  for (const c of curves) {
    points.push([c.x0, c.y0]);
    if (c.turn === 0) continue;
    const from = Math.atan2(c.y0 - c.cy, c.x0 - c.cx);
    let sweep = Math.atan2(c.y1 - c.cy, c.x1 - c.cx) - from;
    if (sweep * c.turn < 0) sweep += c.turn * 2 * Math.PI;
    const steps = Math.max(1, Math.ceil(Math.abs(sweep) / (2 * Math.acos(Math.max(-1, 1 - tolerance / c.r)))));
    for (let i = 1; i < steps; i++) {
      const angle = from + (sweep * i) / steps;
      points.push([c.cx + c.r * Math.cos(angle), c.cy + c.r * Math.sin(angle)]);
    }
  }
  return points;
}

/** The stock's corners. */
export function stockPoints(width: number, thickness: number): Point[] {
  return [
    [0, 0],
    [width, 0],
    [width, thickness],
    [0, thickness],
  ];
}
