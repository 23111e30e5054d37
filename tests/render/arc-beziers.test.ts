import { arc, arcBeziers } from '@fielded/geometry';
import { describe, expect, it } from 'vitest';

/** Greatest distance from the circle of points on an arc's Bézier curves. */
function stray(radius: number, sweep: number): number {
  const turn = sweep > 0 ? 1 : -1;
  const at = (angle: number) => [radius * Math.cos(angle), radius * Math.sin(angle)] as const;
  const from = 0.3;
  const curve = arc(...at(from), ...at(from + sweep), 0, 0, turn);
  let [x0, y0] = [curve.x0, curve.y0];
  let most = 0;
  for (const [x1, y1, x2, y2, x3, y3] of arcBeziers(curve)) {
    for (let i = 0; i <= 200; i += 1) {
      const t = i / 200;
      const b = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3] as const;
      const x = b[0] * x0 + b[1] * x1 + b[2] * x2 + b[3] * x3;
      const y = b[0] * y0 + b[1] * y1 + b[2] * y2 + b[3] * y3;
      most = Math.max(most, Math.abs(Math.hypot(x, y) - radius));
    }
    [x0, y0] = [x3, y3];
  }
  expect(Math.hypot(x0 - curve.x1, y0 - curve.y1)).toBeLessThan(1e-12);
  return most;
}

describe('arcs as Bézier curves', () => {
  it.each([
    [0.5, Math.PI / 2],
    [7, -Math.PI / 2],
    [30, 3],
    [30, -6.2],
    [2000, 0.4],
  ])('stay within 0.002 mm of a radius of %d mm turned through %d', (radius, sweep) => {
    expect(stray(radius, sweep)).toBeLessThan(0.0021);
    expect(stray(radius, sweep)).toBeGreaterThan(0);
  });

  it('are no more than needed: one for a small quarter circle', () => {
    expect(arcBeziers(arc(7, 0, 0, 7, 0, 0, 1))).toHaveLength(1);
  });
});
