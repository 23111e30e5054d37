import type { Verdict } from '@fielded/core';
import { type Loop, polygon } from '@fielded/geometry';
import { ring } from '../geometry/circle.ts';
import { stroke } from '../geometry/stroke.ts';
import type { PathItem } from '../scene.ts';
import { path } from '../scene.ts';

/** A cross of two strokes, `half` mm to each side. */
export function cross(x: number, y: number, half: number): Loop[] {
  return [stroke(x - half, y - half, x + half, y + half), stroke(x - half, y + half, x + half, y - half)];
}

/** The mark of a verdict or of a job that cannot be run, 5 mm square with its middle at (x, y): none is told by colour alone. */
export function verdictMark(verdict: Verdict | 'not-run' | null, x: number, y: number): PathItem {
  const stroke = (...points: [number, number][]) =>
    polygon(
      points.map(([px, py]) => [x + px, y + py] as const),
      false,
    );
  switch (verdict) {
    case 'will-not-enter':
    case 'not-run':
      return path('mark', 'trouble', cross(x, y, 2));
    case 'stops-short':
      return path('mark', 'trouble', [
        stroke([-2.4, 0], [1.2, 0]),
        stroke([-0.4, -1.6], [1.2, 0], [-0.4, 1.6]),
        stroke([2.2, -2.3], [2.2, 2.3]),
      ]);
    case 'tight':
      return path('mark', 'judged', [stroke([-2.3, -2], [-0.4, 0], [-2.3, 2]), stroke([2.3, -2], [0.4, 0], [2.3, 2])]);
    case 'sliding':
      return path('mark', 'judged', [stroke([-2.2, 0.2], [-0.6, 1.9], [2.3, -1.8])]);
    case 'loose':
      return path('mark', 'judged', [ring(x, y, 2)]);
    case null:
      return path('mark', 'trouble', [ring(x, y, 2.2), ...cross(x, y, 1)]);
  }
}
