// Elliptical arcs of path data against the ellipse that they were taken from: its implicit equation, off the origin, tilted, small and large, both ways round.
import { describe, expect, it } from 'vitest';
import { pointAt } from '../../packages/geometry/src/curve/along.ts';
import { svgArc } from '../../packages/geometry/src/path/svg-arc.ts';

const [cx, cy, rx, ry] = [31, -17, 20, 8];

describe('an elliptical arc of path data', () => {
  it.each([
    [0, 20, 110],
    [30, 20, 110],
    [30, 20, 260],
    [-55, 250, 130],
    [75, 100, -140],
  ])('tilted %s°, from %s° to %s°, lies on its ellipse', (tilt, first, last) => {
    const [turn, from, to] = [tilt, first, last].map((degrees) => (degrees * Math.PI) / 180) as [
      number,
      number,
      number,
    ];
    const at = (angle: number) => {
      const [u, v] = [rx * Math.cos(angle), ry * Math.sin(angle)];
      return { x: cx + u * Math.cos(turn) - v * Math.sin(turn), y: cy + u * Math.sin(turn) + v * Math.cos(turn) };
    };
    const [start, end] = [at(from), at(to)];
    const shape = { rx, ry, tilt, large: Math.abs(to - from) > Math.PI, sweep: to > from };
    const chain = svgArc(start.x, start.y, end.x, end.y, shape);
    const points = chain.flatMap((c) => [0, 0.25, 0.5, 0.75, 1].map((share) => pointAt(c, share)));
    for (const { x, y } of points) {
      const [u, v] = [
        (x - cx) * Math.cos(turn) + (y - cy) * Math.sin(turn),
        (y - cy) * Math.cos(turn) - (x - cx) * Math.sin(turn),
      ];
      // The distance from the ellipse to first order: its equation over the length of its gradient.
      const off = ((u / rx) ** 2 + (v / ry) ** 2 - 1) / (2 * Math.hypot(u / rx ** 2, v / ry ** 2));
      expect(Math.abs(off)).toBeLessThan(0.0055);
    }
    // It goes by the middle of the arc that was asked for, and not round the other side.
    const middle = at((from + to) / 2);
    expect(Math.min(...points.map(({ x, y }) => Math.hypot(x - middle.x, y - middle.y)))).toBeLessThan(5);
  });
});
