import type { Job } from '@fielded/core';
import type { Curve } from '@fielded/geometry';
import { regionsOf } from './job-polygons.ts';

/** Nodes and weights of ten-point Gauss–Legendre quadrature (Abramowitz & Stegun, table 25.4). */
const GAUSS = [
  [0.1488743389816312, 0.2955242247147529],
  [0.4333953941292472, 0.2692667193099963],
  [0.6794095682990244, 0.219086362515982],
  [0.8650633666889845, 0.1494513491505806],
  [0.9739065285171717, 0.0666713443086881],
] as const;

/** Wood left, mm², by integrating the cuts' depth along scan lines: no code of the engine, and no closed form of an arc's area. */
export function scanLineArea(job: Job): number {
  const { width, thickness, regions } = regionsOf(job);
  const [front, back] = regions;
  const chain = (curves: readonly Curve[]) => curves.slice(0, -4);
  const taken = sumExactly([
    ...chain(front!.curves).map((c) => integral(c, (y) => thickness - y)),
    ...chain(back!.curves).map((c) => integral(c, (y) => y)),
  ]);
  return width * thickness - taken;
}

function integral(c: Curve, depth: (y: number) => number): number {
  const half = (c.x1 - c.x0) / 2;
  const middle = (c.x0 + c.x1) / 2;
  let sum = 0;
  for (const [node, weight] of GAUSS)
    sum += weight * (depth(heightOf(c, middle - half * node)) + depth(heightOf(c, middle + half * node)));
  return sum * half;
}

function heightOf(c: Curve, x: number): number {
  if (c.turn === 0) return c.x1 === c.x0 ? c.y0 : c.y0 + ((c.y1 - c.y0) * (x - c.x0)) / (c.x1 - c.x0);
  // The side of the centre that the arc runs on: that of its middle.
  const side = (c.y0 + c.y1) / 2 > c.cy ? 1 : -1;
  return c.cy + side * Math.sqrt((c.r - (x - c.cx)) * (c.r + (x - c.cx)));
}

/** Sum with the rounding carried along (Neumaier), so that the check is not the less exact of the two. */
function sumExactly(terms: readonly number[]): number {
  let sum = 0;
  let lost = 0;
  for (const term of terms) {
    const next = sum + term;
    lost += Math.abs(sum) >= Math.abs(term) ? sum - next + term : term - next + sum;
    sum = next;
  }
  return sum + lost;
}

/** The least any method must do: one pass of Green's theorem over the pieces, lines and arcs, nothing else. */
export function greenPass(job: Job): number {
  let area = 0;
  for (const cut of job.cuts) {
    if (cut.profile.shape !== 'outline') throw new RangeError(cut.profile.shape);
    for (const c of cut.profile.chain) {
      area += (c.x0 * c.y1 - c.x1 * c.y0) / 2;
      if (c.turn === 0) continue;
      const angle = 2 * Math.asin(Math.hypot(c.x1 - c.x0, c.y1 - c.y0) / (2 * c.r));
      area += (c.turn * c.r * c.r * (angle - Math.sin(angle))) / 2;
    }
  }
  return area;
}
