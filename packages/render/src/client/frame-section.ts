import type { Report } from '@fielded/core';
import { type Loop, readLoops } from '@fielded/geometry';
import { chordPoints, type SurfacePoint } from './front-surface.ts';

/** The frame's section, `wide` mm of it: x from the sight edge into the frame, y down from its front face. */
export function frameLoop({ frame }: Report, wide: number): { x: number; y: number }[][] {
  const { groove, thickness } = frame;
  const sticking = stickingSurface(frame);
  return [
    [
      { x: wide, y: 0 },
      ...sticking.map(({ a, d }) => ({ x: -a, y: d })),
      { x: 0, y: groove.setback },
      { x: groove.depth, y: groove.setback },
      { x: groove.depth, y: groove.setback + groove.width },
      { x: 0, y: groove.setback + groove.width },
      { x: 0, y: thickness },
      { x: wide, y: thickness },
    ],
  ];
}

/** The lip's face and, down to the raise at the depth `wall`, its edge. */
export function lipSurface({ frame }: Report, wall: number): SurfacePoint[] {
  const sticking = stickingSurface(frame);
  return [...sticking, { a: sticking.at(-1)!.a, d: wall }];
}

/** The lip's face from where the sticking leaves the front face to the sight edge: `a` 0 at the sight edge, negative in the frame. */
function stickingSurface({ sticking }: Report['frame']): SurfacePoint[] {
  const loop: Loop | undefined = sticking === null ? undefined : readLoops(sticking)[0];
  if (loop === undefined) return [{ a: 0, d: 0 }];
  const first = loop.curves[0]!;
  const points = [{ x: first.x0, y: first.y0 }, ...loop.curves.flatMap(chordPoints)];
  // The path runs from the edge, where it is deepest, to the face.
  return points.map(({ x, y }) => ({ a: -x, d: y })).reverse();
}
