import { type Curve, line } from '@fielded/geometry';
import type { Random } from './random.ts';

/** A chain from left to right and the height at each x that it was drawn by; null beyond its ends. */
export interface DrawnChain {
  readonly chain: readonly Curve[];
  readonly heightOf: (x: number) => number | null;
}

/** The arc between two points that turns through `sweep` radians, anticlockwise where that is positive. */
export function bow(x0: number, y0: number, x1: number, y1: number, sweep: number): Curve {
  const r = Math.hypot(x1 - x0, y1 - y0) / 2 / Math.sin(Math.abs(sweep) / 2);
  const off = 1 / (2 * Math.tan(sweep / 2));
  const [cx, cy] = [(x0 + x1) / 2 - (y1 - y0) * off, (y0 + y1) / 2 + (x1 - x0) * off];
  return { x0, y0, x1, y1, cx, cy, r, turn: sweep > 0 ? 1 : -1 };
}

/** Lines and arcs from place to place, each further to the right; no arc comes near the upright. */
export function drawChain(random: Random, places: readonly (readonly [number, number])[]): DrawnChain {
  const chain = places.slice(1).map(([x1, y1], k) => {
    const [x0, y0] = places[k]!;
    const steep = Math.abs(Math.atan2(y1 - y0, x1 - x0));
    const most = Math.min(1.4, 2 * (1.45 - steep));
    const sweep = random.between(0.2 * most, most) * random.oneOf([-1, 1]);
    return random.unit() < 0.3 ? line(x0, y0, x1, y1) : bow(x0, y0, x1, y1, sweep);
  });
  // The circle's equation, solved for y.
  const heightOf = (x: number) => {
    const c = chain.find(({ x0, x1 }) => x >= x0 && x <= x1);
    if (c === undefined) return null;
    if (c.turn === 0) return c.y0 + ((x - c.x0) / (c.x1 - c.x0)) * (c.y1 - c.y0);
    return c.cy - c.turn * Math.sqrt(c.r * c.r - (x - c.cx) ** 2);
  };
  return { chain, heightOf };
}
